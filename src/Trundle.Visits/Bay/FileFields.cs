using System.Globalization;
using Trundle.Measures;
using Trundle.Visits.Files;

namespace Trundle.Visits.Bay;

/// <summary>A file taken apart into the fields of a visit.</summary>
internal static class FileFields
{
    /// <summary>Adds each value under its field; a problem where one is longer than a field may be.</summary>
    public static void Flatten(FileNode node, string field, List<(string, string)> fields, List<Problem> problems)
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
