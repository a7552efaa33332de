namespace HarnessDraw.Writing;

/// <summary>A file to be: its name within the output folder and how its bytes are made. Making it twice gives the same bytes.</summary>
public sealed record OutputFile(string Name, Func<byte[]> Make)
{
    /// <summary>True for a raster picture, which needs much memory while it is made.</summary>
    public bool IsPicture { get; init; }

    /// <summary>Makes the same bytes and tells from time to time what share of the work is done (0 to 1); null where that is not worth telling.</summary>
    public Func<Action<double>, byte[]>? MakeTelling { get; init; }
}
