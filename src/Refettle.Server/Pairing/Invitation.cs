using QRCoder;

namespace Refettle.Server.Pairing;

/// <summary>What the owner is shown to pair a device.</summary>
/// <param name="Address">Where the device goes; the code is in it.</param>
/// <param name="Code">For typing by hand.</param>
public sealed record Invitation(string Address, string Code)
{
    /// <param name="server">The server as others on the network reach it: <c>http://192.168.1.5:5188</c>.</param>
    public static Invitation Of(string server, string code) => new($"{server}{PairingRoutes.Path}?code={code}", code);

    /// <summary>The address as a QR code (ISO/IEC 18004) in half blocks, for a terminal with light letters on dark
    /// ground; phones read the reverse too.</summary>
    public string InTerminal()
    {
        using var generator = new QRCodeGenerator();
        using var data = generator.CreateQrCode(Address, QRCodeGenerator.ECCLevel.M);
        using var code = new AsciiQRCode(data);
        return code.GetGraphicSmall();
    }
}
