using Trundle.Visits.Files;

namespace Trundle.Visits.Operations;

/// <summary>The drawings that belong to the answer of <c>match</c>: each pair as vectors before and after the turn.</summary>
public static class MatchDrawing
{
    /// <summary>One drawing a pair and plane, named "A on 1"; none where the file cannot be answered, or where places were not measured.</summary>
    public static IReadOnlyList<Drawing> Of(FileNode body)
    {
        ArgumentNullException.ThrowIfNull(body);
        var solved = MatchOperation.Solved(body);
        return solved.IsRead ? solved.Value.Drawings() : [];
    }
}
