namespace HarnessDraw.Electrical;

/// <summary>Working figures by row and by part: siemens tied to and amperes pushed into each row, volts, what is left over, the step; siemens and inner volts of the parts.</summary>
internal sealed class NodalWork(int rows, int parts, SparseNetwork.Figures figures)
{
    private readonly int[] sorted = new int[parts];
    private readonly double[] straightDiagonal = new double[figures.Diagonal.Length];
    private readonly double[] straightOff = new double[figures.Off.Length];
    private int straight;
    private int count;

    /// <summary>How many pivots no bending part touches: they are eliminated before the steps.</summary>
    public int Early { get; set; }

    /// <summary>Amperes that sources and what is pushed in drive into each row, those of the rows before handed on.</summary>
    public double[] Driven { get; } = new double[rows];

    /// <summary>Siemens from each row in which steps are taken to the reference, by parts that follow Ohm.</summary>
    public double[] Ties { get; } = new double[rows];

    /// <summary>Siemens between such rows by slot, negative, by parts that follow Ohm.</summary>
    public double[] StraightBetween => straightOff;

    public double[] Extra { get; } = new double[rows];
    public double[] Pushed { get; } = new double[rows];
    public double[] Volts { get; } = new double[rows];
    public double[] Left { get; } = new double[rows];
    public double[] Step { get; } = new double[rows];
    public double[] Siemens { get; } = new double[parts];
    public double[] Emf { get; } = new double[parts];
    public SparseNetwork.Figures Figures => figures;

    /// <summary>Parts whose current goes straight with their volts, and the others.</summary>
    public ReadOnlySpan<int> Straight => sorted.AsSpan(0, straight);
    public ReadOnlySpan<int> Bent => sorted.AsSpan(straight, count - straight);

    public void Sort(PartLaw[] laws, int[] conducting)
    {
        (straight, count) = (0, conducting.Length);
        var bent = count;
        foreach (var i in conducting)
        {
            ref readonly var law = ref laws[i];
            if (law.Kind is PartBehaviour.Ohmic or PartBehaviour.Source)
            {
                (Siemens[i], Emf[i]) = (1 / law.Ohm, law.RatedV);
                sorted[straight++] = i;
            }
            else
            {
                sorted[--bent] = i;
            }
        }
    }

    /// <summary>Rows in which steps are taken.</summary>
    public ReadOnlySpan<int> Bending(SparseNetwork.Conducting conducting) => conducting.Node.AsSpan(Early);

    public void KeepStraight(SparseNetwork.Conducting conducting)
    {
        figures.Diagonal.CopyTo(straightDiagonal, 0);
        figures.Off.CopyTo(straightOff, 0);
        var (node, first) = (conducting.Node, conducting.First);
        foreach (var n in Bending(conducting))
        {
            Ties[n] = straightDiagonal[n];
        }

        for (var k = Early; k < node.Length; k++)
        {
            for (var i = first[k]; i < first[k + 1]; i++)
            {
                Ties[node[k]] += straightOff[conducting.Slot[i]];
                Ties[conducting.Near[i]] += straightOff[conducting.Slot[i]];
            }
        }
    }

    public void TakeStraight()
    {
        straightDiagonal.CopyTo(figures.Diagonal, 0);
        straightOff.CopyTo(figures.Off, 0);
    }

    public NodalWork Cleared()
    {
        foreach (var figures in (double[][])[Extra, Pushed, Volts, Left, Step])
        {
            Array.Clear(figures);
        }

        return this;
    }
}
