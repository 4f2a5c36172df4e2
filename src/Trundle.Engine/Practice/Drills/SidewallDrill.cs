using Trundle.Engine.Findings;
using Trundle.Engine.Sidewall;
using Trundle.Measures;

namespace Trundle.Engine.Practice.Drills;

/// <summary>A marking to be read; what it means is what the engine's reader says.</summary>
internal static class SidewallDrill
{
    private static readonly int[] Widths = [165, 175, 185, 195, 205, 215, 225, 235, 245];
    private static readonly int[] Ratios = [40, 45, 50, 55, 60, 65, 70];
    private static readonly string[] Symbols = ["Q", "S", "T", "H", "V", "W"];

    public static Drill Of(ulong seed)
    {
        var stream = SeedStream.Of(seed, "sidewall");
        var text = $"{stream.OneOf(Widths)}/{stream.OneOf(Ratios)} R{stream.Between(14, 19)} {stream.Between(75, 104)}{stream.OneOf(Symbols)}";
        var marking = MarkingReader.Read(text).Value;
        var (size, service) = (marking.Size, marking.Service);
        var source = new Source("UN R30, as the engine reads the marking", SourceStatus.FromMemory);
        var diameter = Length.FromInches(size.RimDiameterInches!.Value);
        return new Drill(DrillKind.Sidewall, seed, DrillList.Title(DrillKind.Sidewall), [new("marking", text)],
        [
            Asking.Quantity(new("width", "The section width.", 15, false), size.SectionWidth!.Value, "mm", 0, 0.5, source, "The first number is the section width in millimetres."),
            Asking.Quantity(new("height", "How high the sidewall is, by the marking.", 20, false), size.SectionWidth!.Value * (size.AspectRatioPercent!.Value / 100), "mm", 1, 1, source, "The second number is the height in per cent of the width."),
            Asking.Quantity(new("rim", "The diameter of the rim that it is made for.", 20, true), diameter, "in", 0, 0.01, source, "The number behind R is the rim diameter in inches: a tyre is never forced on a rim of another."),
            Asking.Quantity(new("load", "The greatest load that one tyre may carry.", 25, true), service.LoadSingle!.Value, "kg", 0, 2, source, $"Load index {Asking.Text(service.LoadIndexSingle!.Value)} is looked up in its table; it is not a number of kilograms."),
            Asking.Quantity(new("speed", "The greatest speed of its symbol.", 20, true), service.Speed!.Value, "km/h", 0, 0.5, source, $"The letter {service.SpeedSymbol} is looked up in its table."),
        ]);
    }
}
