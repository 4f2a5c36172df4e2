using Trundle.Measures;

namespace Trundle.Engine.Sidewall;

/// <summary>Reads sidewall markings.</summary>
public static class MarkingReader
{
    /// <summary>Reads a marking.</summary>
    /// <source>UN R30 2.x (from memory)</source>
    public static Reading<Marking> Read(string? text) => Reading<Marking>.Failed("marking-unknown", $"'{text}' cannot be read yet.");
}
