using System.Buffers;
using System.Globalization;
using System.Text;

namespace HarnessDraw.Writing.CutList;

/// <summary>Builds a CSV text after RFC 4180: cells quoted where needed, quotes doubled, lines ended by CR LF.</summary>
internal sealed class CsvBuilder(CsvOptions options)
{
    // a reader that guesses another separator must not cut a cell in two either
    private static readonly SearchValues<char> NeedsQuotes = SearchValues.Create(",;\t|\"\r\n");
    private readonly StringBuilder text = new();
    private bool lineBegun;

    public CsvBuilder Text(string? value)
    {
        BeginCell();
        var cell = SpreadsheetText.Guard(value ?? "");
        if (cell.AsSpan().ContainsAny(NeedsQuotes) || cell != cell.Trim())
        {
            text.Append('"').Append(cell.Replace("\"", "\"\"", StringComparison.Ordinal)).Append('"');
        }
        else
        {
            text.Append(cell);
        }

        return this;
    }

    /// <summary>A plain number without exponent, thousands mark or negative zero; an unknown one leaves the cell empty.</summary>
    public CsvBuilder Number(double? value, int decimals)
    {
        BeginCell();
        if (value is { } known && Math.Abs(known) < 1e15)
        {
            var rounded = Math.Round((decimal)known, decimals, MidpointRounding.AwayFromZero);
            var plain = (rounded == 0 ? 0m : rounded).ToString("0.######", CultureInfo.InvariantCulture).Replace('.', options.DecimalMark);
            text.Append(plain.Contains(options.Separator, StringComparison.Ordinal) ? $"\"{plain}\"" : plain);
        }

        return this;
    }

    public CsvBuilder EndLine()
    {
        text.Append("\r\n");
        lineBegun = false;
        return this;
    }

    public byte[] ToBytes()
    {
        var body = Encoding.UTF8.GetBytes(text.ToString());
        return options.ByteOrderMark ? [0xEF, 0xBB, 0xBF, .. body] : body;
    }

    private void BeginCell()
    {
        if (lineBegun)
        {
            text.Append(options.Separator);
        }

        lineBegun = true;
    }
}
