using System.Globalization;
using System.Text.Json.Nodes;
using Bunit;
using Microsoft.AspNetCore.Components;
using Microsoft.Extensions.DependencyInjection;
using Trundle.Engine.Vehicles;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;
using Trundle.Web.Client.Frame;
using Trundle.Web.Client.Tools;

namespace Trundle.Web.Client.Tests.Tools;

/// <summary>A tool's page on a browser that stands for the real one, filled with a sample file of the command.</summary>
public abstract class ToolContext : BayContext
{
    internal IRenderedComponent<ToolPage> Tool(string key)
    {
        Navigation.NavigateTo(Places.Tool(key));
        return Render<ToolPage>(p => p.Add(x => x.Key, key));
    }

    internal IRenderedComponent<ToolPage> Tool(string key, string sample)
    {
        Browser.Remembered[$"trundle-{key}"] = new JsonObject(Fields(sample).Select(f => KeyValuePair.Create(f.Field, (JsonNode?)f.Typed))).ToJsonString();
        return Tool(key);
    }

    internal IRenderedComponent<BayPage> AtWheel(string position, string key)
    {
        Navigation.NavigateTo(Places.AtWheel(VisitId, Position.Read(position).Value, key));
        return Render<BayPage>(p => p.Add(x => x.Id, VisitId).Add(x => x.LegKey, Places.Wheel).Add(x => x.Place, position).Add(x => x.Step, key));
    }

    internal NavigationManager Navigation => Services.GetRequiredService<NavigationManager>();

    /// <summary>The form behind a page.</summary>
    internal static ToolForm Form(IRenderedComponent<IComponent> page) => page.FindComponent<ToolBody>().Instance.Form;

    internal static string Text(string sample) => File.ReadAllText(Path.Combine(AppContext.BaseDirectory, sample));

    /// <summary>What the command answers to a sample.</summary>
    internal static Answer Command(string operation, string sample) => FileNode.Parse(Text(sample), sample).Then(OperationList.Of(operation).Run).Value;

    /// <summary>A sample file taken apart into fields.</summary>
    internal static IReadOnlyList<(string Field, string Typed)> Fields(string sample)
    {
        var fields = new List<(string, string)>();
        Walk("", JsonNode.Parse(Text(sample)));
        return fields;

        void Walk(string at, JsonNode? node)
        {
            var children = node switch
            {
                JsonObject o => o.Select(m => (m.Key, m.Value)),
                JsonArray a when at == "fitted" => a.Select(v => (v!["position"]!.GetValue<string>(), (JsonNode?)v)),
                JsonArray a => a.Select((v, i) => (i.ToString(CultureInfo.InvariantCulture), v)),
                _ => null,
            };
            if (children is null)
            {
                fields.Add((at, node is JsonValue v && v.TryGetValue<string>(out var text) ? text : node!.ToJsonString()));
                return;
            }

            foreach (var (name, child) in children.Where(c => c.Item1 != "position" || !at.StartsWith("fitted.", StringComparison.Ordinal)))
            {
                Walk(at.Length == 0 ? name : $"{at}.{name}", child);
            }
        }
    }
}
