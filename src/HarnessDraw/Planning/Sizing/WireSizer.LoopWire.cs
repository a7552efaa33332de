namespace HarnessDraw.Planning.Sizing;

/// <summary>The wires of a loop that is thickened.</summary>
internal sealed partial class WireSizer
{
    /// <summary>A wire of a loop while its size is sought: what each of its sizes comes to and drops is worked out once.</summary>
    private sealed class LoopWire(LoopPass pass, WireSizer sizer)
    {
        private readonly WireRow wire = pass.Wire;
        private readonly double rootA = Math.Sqrt(pass.CurrentA);
        private readonly double[] dropV = Enumerable.Repeat(double.NaN, pass.Wire.Sizes.Length).ToArray();
        private readonly int[] ends = Enumerable.Repeat(-1, pass.Wire.Sizes.Length).ToArray();

        public WireRow Wire => wire;

        /// <summary>Volts that a hand-given wire loses beyond what it would as thick as the others of its loop.</summary>
        public double ExcessAt(double areaPerRootA) =>
            wire.Given && Math.Max(wire.OwnAreaMm2, areaPerRootA * rootA) is var area && area > wire.SizeNow.AreaMm2 ? pass.DropV(wire.Size) - pass.DropVAs(area) : 0;

        public double DropAt(double areaPerRootA)
        {
            if (wire.Given)
            {
                return pass.DropV(wire.Size) - ExcessAt(areaPerRootA);
            }

            var size = SizeAt(areaPerRootA);
            if (double.IsNaN(dropV[size]))
            {
                dropV[size] = pass.DropV(size);
            }

            return dropV[size];
        }

        public int SizeAt(double areaPerRootA)
        {
            if (wire.Given)
            {
                return wire.Size;
            }

            var area = areaPerRootA * rootA;
            var size = wire.Size;
            while (size < wire.Sizes.Length - 1 && wire.Sizes[size].AreaMm2 < area - 1e-12)
            {
                size++;
            }

            if (ends[size] < 0)
            {
                ends[size] = Terminated(size);
            }

            return ends[size];
        }

        /// <summary>The biggest size that can still be terminated, where the drop asks for more than its terminals take.</summary>
        private int Terminated(int size)
        {
            while (size > wire.Size && !sizer.HasTerminal(wire, size))
            {
                size--;
            }

            return size;
        }
    }
}
