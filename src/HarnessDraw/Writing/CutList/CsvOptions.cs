namespace HarnessDraw.Writing.CutList;

/// <summary>How a CSV file is written: what parts the cells, what parts whole from decimal, and whether a byte order mark leads.</summary>
public sealed record CsvOptions
{
    /// <summary>Comma, semicolon or tab.</summary>
    public char Separator { get; init; } = ',';

    /// <summary>Point or comma.</summary>
    public char DecimalMark { get; init; } = '.';

    /// <summary>Some spreadsheets read UTF-8 only behind a mark.</summary>
    public bool ByteOrderMark { get; init; }
}
