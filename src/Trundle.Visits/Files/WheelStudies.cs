namespace Trundle.Visits.Files;

/// <summary>The parts of an assembly in a visit's file that are each the whole file of one operation: kept with the wheel, read by that operation alone.</summary>
public static class WheelStudies
{
    /// <summary>The key in the assembly, and the operation that reads it.</summary>
    public static IReadOnlyList<(string Key, string Operation)> All { get; } =
    [
        ("why", "balance why"),
        ("trial", "balance trial"),
        ("runout", "runout"),
        ("match", "match"),
        ("leak", "leak"),
    ];
}
