using System.Text;

namespace HarnessDraw.Cli;

/// <summary>The three streams of a run and what stands behind them. Tests put memory there.</summary>
public sealed record Terminal(Stream Output, TextWriter Messages, TextReader Answers)
{
    /// <summary>A person reads the messages: progress may be shown.</summary>
    public bool MessagesSeen { get; init; }

    /// <summary>A person can be asked.</summary>
    public bool CanAsk { get; init; }

    /// <summary>Messages may be coloured.</summary>
    public bool Colour { get; init; }

    public static Terminal OfProcess()
    {
        var seen = !Console.IsErrorRedirected;
        return new(Console.OpenStandardOutput(), new StreamWriter(Console.OpenStandardError(), new UTF8Encoding(false)) { AutoFlush = true }, TextReader.Null)
        {
            Answers = Console.IsInputRedirected ? TextReader.Null : Console.In,
            MessagesSeen = seen,
            CanAsk = !Console.IsInputRedirected && seen,
            Colour = seen && ColourWanted(Environment.GetEnvironmentVariable("NO_COLOR"), Environment.GetEnvironmentVariable("TERM")),
        };
    }

    /// <summary>NO_COLOR with any text in it, and terminals that know no colour, keep messages plain.</summary>
    public static bool ColourWanted(string? noColour, string? term) => string.IsNullOrEmpty(noColour) && term != "dumb";

    /// <summary>Puts a whole result on the output in one go.</summary>
    public void Put(ReadOnlySpan<byte> result)
    {
        Output.Write(result);
        Output.Flush();
    }

    /// <summary>Puts text and a line end on the output.</summary>
    public void PutLine(string text) => Put(Encoding.UTF8.GetBytes(text + "\n"));

    public void Say(string message)
    {
        Messages.Write(message);
        Messages.Write('\n');
    }

    /// <summary>'error: ...' in the colour of errors.</summary>
    public void SayError(string message) => Say($"{Paint("error:", "1;31")} {message}");

    /// <summary>Text in an ANSI colour, or as it is.</summary>
    public string Paint(string text, string code) => Colour ? $"\u001b[{code}m{text}\u001b[0m" : text;
}
