using Spectre.Console.Rendering;

namespace Refettle.Cli.Views;

/// <summary>Text that is shown as it is, never wrapped: a file.</summary>
internal sealed class Verbatim(string text) : Renderable
{
    protected override IEnumerable<Segment> Render(RenderOptions options, int maxWidth) => [new(text.TrimEnd('\n'))];
}
