using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>
/// The workshop's own rules as the fields of a visit. A visit takes them along when it is opened, so that the tablet, the host, the sheet and the command
/// judge it by the same ones, and by those only, however the workshop's file changes later.
/// </summary>
/// <param name="Fields">Each field with what stands in it, in order.</param>
public sealed record WorkshopRules(IReadOnlyList<(string Field, string Typed)> Fields)
{
    /// <summary>The name under which they stand in a visit's file.</summary>
    public const string Root = "shopRules";

    /// <summary>A workshop without rules of its own.</summary>
    public static WorkshopRules None { get; } = new([]);

    /// <summary>True for a field of the workshop's rules.</summary>
    public static bool IsField(string field)
    {
        ArgumentNullException.ThrowIfNull(field);
        return field == Root || field.StartsWith(Root + ".", StringComparison.Ordinal);
    }

    /// <summary>Reads the workshop's file; the first problem where it has one.</summary>
    public static Reading<WorkshopRules> Read(FileNode root)
    {
        ArgumentNullException.ThrowIfNull(root);
        var problems = new List<Problem>();
        ShopRulesReader.ReadFile(new FileObject(root, problems));
        var fields = new List<(string, string)>();
        FileFields.Flatten(root, Root, fields, problems);
        return problems.Count > 0 ? Reading<WorkshopRules>.Failed(problems[0]) : Reading<WorkshopRules>.Of(new WorkshopRules(fields));
    }

    /// <summary>The first problem of a workshop's file that somebody hands over, at its place in the body; null where it may be taken.</summary>
    public static Problem? Refused(FileNode root) => Read(root).Match<Problem?>(_ => null, problem => problem.At($"{Root}.{problem.Where}"));
}
