using System.Collections.Immutable;

namespace HarnessDraw.Writing.Lists;

/// <summary>Columns with how each is filled from a row; makes tables.</summary>
internal sealed class TableShape<T>
{
    private readonly List<(ListColumn Column, Func<T, ListCell> Cell)> columns = [];

    public ImmutableArray<string> Heads => [.. columns.Select(c => c.Column.Head)];

    public TableShape<T> Text(string head, Func<T, string?> text) => Add(new(head, CellKind.Text), row => new(text(row), null));

    public TableShape<T> Number(string head, int decimals, Func<T, double?> number) => Add(new(head, CellKind.Number, decimals), row => new(null, number(row)));

    public TableShape<T> Ticks(params ReadOnlySpan<string> heads)
    {
        foreach (var head in heads)
        {
            Add(new(head, CellKind.Tick), _ => default);
        }

        return this;
    }

    /// <summary>The same columns for rows that hold a <typeparamref name="T"/>.</summary>
    public TableShape<T> With<TOther>(TableShape<TOther> other, Func<T, TOther> of)
    {
        columns.AddRange(other.columns.Select(c => (c.Column, (Func<T, ListCell>)(row => c.Cell(of(row))))));
        return this;
    }

    public ListTable Table(string name, string title, IEnumerable<T> rows)
    {
        var table = ImmutableArray.CreateBuilder<ImmutableArray<ListCell>>();
        foreach (var row in rows)
        {
            var cells = ImmutableArray.CreateBuilder<ListCell>(columns.Count);
            foreach (var (_, cell) in columns)
            {
                cells.Add(cell(row));
            }

            table.Add(cells.MoveToImmutable());
        }

        return new(name, title, [.. columns.Select(c => c.Column)], table.DrainToImmutable());
    }

    private TableShape<T> Add(ListColumn column, Func<T, ListCell> cell)
    {
        columns.Add((column, cell));
        return this;
    }
}
