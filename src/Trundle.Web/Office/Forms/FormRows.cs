using System.Globalization;
using System.Text.Json.Nodes;

namespace Trundle.Web.Office.Forms;

/// <summary>
/// The rows of a form's lists, such as <c>points[2].reference</c>: rows in which nothing stands close up in the record, and a problem of the record finds
/// the way back to the row that it is about.
/// </summary>
internal static class FormRows
{
    /// <summary>The name in the record of each name in the form in which anything stands.</summary>
    public static IReadOnlyDictionary<string, string> Closed(IEnumerable<string> standing)
    {
        var order = new Dictionary<string, List<string>>(StringComparer.Ordinal);
        var names = new Dictionary<string, string>(StringComparer.Ordinal);
        foreach (var name in standing)
        {
            var from = name.IndexOf('[', StringComparison.Ordinal);
            if (from < 0)
            {
                names[name] = name;
                continue;
            }

            var to = name.IndexOf(']', from);
            var (list, row) = (name[..from], name[(from + 1)..to]);
            var rows = order.TryGetValue(list, out var known) ? known : order[list] = [];
            if (!rows.Contains(row))
            {
                rows.Add(row);
            }

            names[name] = string.Create(CultureInfo.InvariantCulture, $"{list}[{rows.IndexOf(row)}]{name[(to + 1)..]}");
        }

        return names;
    }

    /// <summary>Puts a text at a place of a body, making the objects and lists on the way.</summary>
    public static void Put(JsonObject body, string place, string text)
    {
        JsonNode at = body;
        var steps = place.Replace("[", ".[", StringComparison.Ordinal).Split('.');
        for (var i = 0; i < steps.Length; i++)
        {
            var last = i == steps.Length - 1;
            JsonNode? next = last ? JsonValue.Create(text) : null;
            if (steps[i].StartsWith('['))
            {
                var index = int.Parse(steps[i][1..^1], CultureInfo.InvariantCulture);
                var list = (JsonArray)at;
                next ??= index < list.Count ? list[index] : null;
                next ??= Fresh(steps[i + 1]);
                if (index == list.Count)
                {
                    list.Add(next);
                }

                at = next;
            }
            else
            {
                var members = (JsonObject)at;
                next ??= members[steps[i]];
                next ??= Fresh(steps[i + 1]);
                if (next.Parent is null)
                {
                    members[steps[i]] = next;
                }

                at = next;
            }
        }

        static JsonNode Fresh(string next) => next.StartsWith('[') ? new JsonArray() : new JsonObject();
    }
}
