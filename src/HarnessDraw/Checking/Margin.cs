namespace HarnessDraw.Checking;

/// <summary>A figure that passes its rule, and how close it came: <paramref name="Fraction"/> is the room left as a fraction of the limit.</summary>
public sealed record Margin(string Rule, string What, double Value, double Limit, string Unit, double Fraction)
{
    /// <summary>'wire E05: 13.2 A of 14 A, 6 % to spare'.</summary>
    public override string ToString() =>
        $"{What}: {Figure.Of(Value, Unit)} of {Figure.Of(Limit, Unit)}, {Figure.Number(Math.Floor(Fraction * 100))} % to spare";
}
