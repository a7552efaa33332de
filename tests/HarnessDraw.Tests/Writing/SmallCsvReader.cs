using System.Text;

namespace HarnessDraw.Tests.Writing;

/// <summary>Reads RFC 4180 text by its grammar, one character at a time; knows nothing of how the program writes.</summary>
internal static class SmallCsvReader
{
    public static List<List<string>> Read(string text, char separator)
    {
        List<List<string>> lines = [];
        List<string> line = [];
        var cell = new StringBuilder();
        var quoted = false;
        for (var i = 0; i < text.Length; i++)
        {
            var c = text[i];
            if (quoted && c == '"' && i + 1 < text.Length && text[i + 1] == '"')
            {
                cell.Append('"');
                i++;
            }
            else if (c == '"')
            {
                quoted = !quoted;
            }
            else if (!quoted && c == separator)
            {
                line.Add(cell.ToString());
                cell.Clear();
            }
            else if (!quoted && c == '\r' && i + 1 < text.Length && text[i + 1] == '\n')
            {
                line.Add(cell.ToString());
                cell.Clear();
                lines.Add(line);
                line = [];
                i++;
            }
            else
            {
                cell.Append(c);
            }
        }

        return line.Count == 0 && cell.Length == 0 && !quoted ? lines : throw new InvalidDataException("the last line is not ended");
    }
}
