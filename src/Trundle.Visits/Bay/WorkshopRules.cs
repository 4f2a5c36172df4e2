using System.Globalization;
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
        Flatten(root, Root, fields, problems);
        return problems.Count > 0 ? Reading<WorkshopRules>.Failed(problems[0]) : Reading<WorkshopRules>.Of(new WorkshopRules(fields));
    }

    /// <summary>The first problem of a workshop's file that somebody hands over, at its place in the body; null where it may be taken.</summary>
    public static Problem? Refused(FileNode root) => Read(root).Match<Problem?>(_ => null, problem => problem.At($"{Root}.{problem.Where}"));

    private static void Flatten(FileNode node, string field, List<(string, string)> fields, List<Problem> problems)
    {
        switch (node.Kind)
        {
            case NodeKind.Object:
                foreach (var (key, member) in node.Members)
                {
                    Flatten(member, $"{field}.{key}", fields, problems);
                }

                break;
            case NodeKind.Array:
                for (var i = 0; i < node.Items.Count; i++)
                {
                    Flatten(node.Items[i], string.Create(CultureInfo.InvariantCulture, $"{field}.{i}"), fields, problems);
                }

                break;
            case NodeKind.Null:
                break;
            default:
                if (node.Text.Length > Entry.MostCharacters)
                {
                    problems.Add(new Problem(node.Path, "too-long", string.Create(CultureInfo.InvariantCulture, $"There are {node.Text.Length} characters; at most {Entry.MostCharacters} are kept in one field.")));
                }

                fields.Add((field, node.Text));
                break;
        }
    }
}
