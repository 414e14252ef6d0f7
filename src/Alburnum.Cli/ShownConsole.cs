using Spectre.Console;
using Spectre.Console.Rendering;

namespace Alburnum.Cli;

/// <summary>A console on which signs that steer a terminal are shown and not sent, whoever wrote them; colours and layout are the program's own.</summary>
/// <param name="console">The console that it writes to.</param>
internal sealed class ShownConsole(IAnsiConsole console) : IAnsiConsole
{
    public Profile Profile => console.Profile;

    public IAnsiConsoleCursor Cursor => console.Cursor;

    public IAnsiConsoleInput Input => console.Input;

    public IExclusivityMode ExclusivityMode => console.ExclusivityMode;

    public RenderPipeline Pipeline => console.Pipeline;

    /// <summary>A text of several lines as it is shown.</summary>
    public static string Shown(string text) => string.Join('\n', text.Split('\n').Select(InputProblem.Visible));

    public void Clear(bool home) => console.Clear(home);

    // Only the console's own pieces write so.
    public void WriteAnsi(Action<AnsiWriter> action) => console.WriteAnsi(action);

    public void Write(IRenderable renderable) => console.Write(new ShownRenderable(renderable));

    private sealed class ShownRenderable(IRenderable renderable) : IRenderable
    {
        public Measurement Measure(RenderOptions options, int maxWidth) => renderable.Measure(options, maxWidth);

        public IEnumerable<Segment> Render(RenderOptions options, int maxWidth) =>
            renderable
                .Render(options, maxWidth)
                .Select(segment =>
                    segment.IsControlCode || segment.IsLineBreak
                        ? segment
                        : new Segment(Shown(segment.Text), segment.Style)
                );
    }
}
