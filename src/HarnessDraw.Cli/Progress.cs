using System.Diagnostics;

namespace HarnessDraw.Cli;

/// <summary>One line on the terminal that says what long work is doing; silent when nobody sees it or the work is short.</summary>
internal sealed class Progress(Terminal terminal, int steps) : IDisposable
{
    private const int QuietMs = 300;
    private readonly long _started = Stopwatch.GetTimestamp();
    private readonly Lock _gate = new();
    private int _done;
    private int _shown;

    /// <summary>The next step begins.</summary>
    public void Step(string what)
    {
        lock (_gate)
        {
            _done++;
            Show($"{_done} of {steps}: {what}");
        }
    }

    /// <summary>How far a step has come, from 0 to 1.</summary>
    public void Share(string what, double share)
    {
        lock (_gate)
        {
            Show($"{_done} of {steps}: {Bar(share)} {what}");
        }
    }

    /// <summary>'[#####---------------]  25 %'.</summary>
    public static string Bar(double share)
    {
        const int Cells = 20;
        var full = (int)Math.Round(Math.Clamp(share, 0, 1) * Cells);
        return FormattableString.Invariant($"[{new string('#', full)}{new string('-', Cells - full)}] {Math.Clamp(share, 0, 1) * 100,3:0} %");
    }

    private void Show(string line)
    {
        if (terminal.MessagesSeen && Stopwatch.GetElapsedTime(_started).TotalMilliseconds >= QuietMs)
        {
            terminal.Messages.Write('\r' + line.PadRight(_shown));
            _shown = line.Length;
        }
    }

    public void Dispose()
    {
        if (_shown > 0)
        {
            terminal.Messages.Write('\r' + new string(' ', _shown) + '\r');
        }
    }
}
