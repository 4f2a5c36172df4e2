using Trundle.Engine.Vehicles;
using Trundle.Measures;

namespace Trundle.Engine.Fitment;

/// <summary>Tread depths as one number, for comparing how tyres roll.</summary>
public static class Tread
{
    /// <summary>The mean of the depths at the centre, or of all depths where none was measured there; null where there is none at all.</summary>
    /// <source>common practice: the centre carries the rolling radius</source>
    public static Length? Mean(Assembly assembly)
    {
        ArgumentNullException.ThrowIfNull(assembly);
        var depths = assembly.Tread is not { } tread ? [] : tread.Centre.Count > 0 ? tread.Centre : [.. tread.All.Select(t => t.Depth)];
        return depths.Count == 0 ? null : Length.FromMetres(depths.Average(d => d.Metres));
    }
}
