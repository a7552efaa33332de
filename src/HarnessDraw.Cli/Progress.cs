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

    public void Step(string what)
    {
        lock (_gate)
        {
            _done++;
            if (!terminal.MessagesSeen || Stopwatch.GetElapsedTime(_started).TotalMilliseconds < QuietMs)
            {
                return;
            }

            var line = $"{_done} of {steps}: {what}";
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
