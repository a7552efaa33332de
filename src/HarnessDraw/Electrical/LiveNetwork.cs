namespace HarnessDraw.Electrical;

/// <summary>
/// What open parts leave of a network: the same for all laws that leave the same parts open. Rows that conduct to the reference, a row of each island that does not,
/// dead ends each with the row it hangs on, and what is left to solve.
/// </summary>
internal sealed record LiveNetwork(NodalSolver Solver, PartRole[] Roles, int TiedRow, bool[] Reached, List<int> Ties, (int Row, int Other)[] Dead, SparseNetwork.Conducting Conducting)
{
    public bool Holds(NodalSolver solver, PartLaw[] laws, int tiedRow)
    {
        // a short at a row through which current flows anyway leaves the shape as it is
        if (solver != Solver || (tiedRow != TiedRow && (TiedRow >= 0 || tiedRow < 0 || !Reached[tiedRow] || IsHanging(tiedRow))))
        {
            return false;
        }

        for (var i = 0; i < laws.Length; i++)
        {
            if (laws[i].Role != Roles[i])
            {
                return false;
            }
        }

        return true;
    }

    // at the end of a chain that leads nowhere
    private bool IsHanging(int row)
    {
        foreach (var (end, _) in Dead)
        {
            if (end == row)
            {
                return true;
            }
        }

        return false;
    }
}
