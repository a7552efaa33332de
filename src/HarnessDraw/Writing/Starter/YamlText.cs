using System.Text;

namespace HarnessDraw.Writing.Starter;

/// <summary>Lines of YAML, ended by a line feed on every machine.</summary>
internal sealed class YamlText
{
    private readonly StringBuilder _text = new();

    public void Lines(string lines) => _text.Append(lines.ReplaceLineEndings("\n")).Append('\n');

    public void LineIf(bool wanted, string line)
    {
        if (wanted)
        {
            Lines(line);
        }
    }

    /// <summary>A text that YAML reads back as it is, whatever it looks like.</summary>
    public static string Quoted(string text) => $"'{text.Replace("'", "''", StringComparison.Ordinal)}'";

    public override string ToString() => _text.ToString();
}
