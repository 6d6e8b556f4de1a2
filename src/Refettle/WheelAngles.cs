namespace Refettle;

/// <summary>The angles of one wheel in degrees, as an alignment rig gives them; null where not measured.</summary>
/// <param name="Corner">fl, fr, rl or rr.</param>
/// <param name="Toe">Of this wheel alone; toe-in positive (ISO 8855:2011, 7.1.6).</param>
/// <param name="Camber">Top outward positive.</param>
public sealed record WheelAngles(string Corner, decimal? Toe, decimal? Camber, decimal? Caster);
