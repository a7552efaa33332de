using System.Buffers;
using System.Globalization;
using System.Text;

namespace HarnessDraw.Writing.CutList;

/// <summary>Builds a CSV text after RFC 4180: cells quoted where needed, quotes doubled, lines ended by CR LF.</summary>
internal sealed class CsvBuilder : IDisposable
{
    private const int MostDigits = 20;

    // a reader that guesses another separator must not cut a cell in two either
    private static readonly SearchValues<char> NeedsQuotes = SearchValues.Create(",;\t|\"\r\n");
    private readonly CsvOptions options;
    private readonly ByteBlocks bytes = new();
    private bool lineBegun;

    public CsvBuilder(CsvOptions options)
    {
        this.options = options;
        if (options.ByteOrderMark)
        {
            Append("\uFEFF");
        }
    }

    public CsvBuilder Text(string? value)
    {
        BeginCell();
        var cell = SpreadsheetText.Guard(value ?? "");
        if (cell.AsSpan().ContainsAny(NeedsQuotes) || BeginsOrEndsBlank(cell))
        {
            Append($"\"{cell.Replace("\"", "\"\"", StringComparison.Ordinal)}\"");
        }
        else
        {
            Append(cell);
        }

        return this;
    }

    /// <summary>A plain number without exponent, thousands mark or negative zero; an unknown one leaves the cell empty.</summary>
    public CsvBuilder Number(double? value, int decimals)
    {
        BeginCell();
        if (value is { } known && Math.Abs(known) < 1e15)
        {
            AppendNumber(known, decimals);
        }

        return this;
    }

    public CsvBuilder EndLine()
    {
        Append("\r\n");
        lineBegun = false;
        return this;
    }

    public byte[] ToBytes() => bytes.ToArray();

    public void Dispose() => bytes.Dispose();

    // most are whole and need no decimal arithmetic
    private void AppendNumber(double value, int decimals)
    {
        if (value == Math.Truncate(value))
        {
            ((long)value).TryFormat(bytes.GetSpan(MostDigits), out var taken, default, CultureInfo.InvariantCulture);
            bytes.Advance(taken);
            return;
        }

        var rounded = Math.Round((decimal)value, decimals, MidpointRounding.AwayFromZero);
        var plain = (rounded == 0 ? 0m : rounded).ToString("0.######", CultureInfo.InvariantCulture).Replace('.', options.DecimalMark);
        Append(plain.Contains(options.Separator, StringComparison.Ordinal) ? $"\"{plain}\"" : plain);
    }

    private static bool BeginsOrEndsBlank(string cell) => cell.Length > 0 && (char.IsWhiteSpace(cell[0]) || char.IsWhiteSpace(cell[^1]));

    private void Append(ReadOnlySpan<char> text) => bytes.Advance(Encoding.UTF8.GetBytes(text, bytes.GetSpan(Encoding.UTF8.GetMaxByteCount(text.Length))));

    private void BeginCell()
    {
        if (lineBegun)
        {
            Append([options.Separator]);
        }

        lineBegun = true;
    }
}
