using System.Text.Json.Nodes;
using Trundle.Engine.Fixings;
using Trundle.Measures;
using Trundle.Visits.Files;
using Trundle.Visits.Operations;

namespace Trundle.Web.Client.Refit;

/// <summary>
/// The torque wrench as it is used on this device: with an adapter on it, its setting is another one than the torque. It is remembered from
/// wheel to wheel while the page is open and recorded nowhere, since what is recorded is what the fixing got.
/// </summary>
public sealed class WrenchInHand
{
    /// <summary>The wrench's length, as typed.</summary>
    public string Length { get; set; } = "";

    /// <summary>The adapter's length, as typed.</summary>
    public string Adapter { get; set; } = "";

    /// <summary>The adapter's turn, as typed.</summary>
    public string Turn { get; set; } = "";

    /// <summary>The adapter, or null where there is none or where it cannot be read; and what is wrong with what was typed.</summary>
    public (WrenchAdapter? Adapter, IReadOnlyList<Problem> Problems) Read()
    {
        var body = new JsonObject();
        Put("wrenchLength", Length);
        Put("adapter", Adapter);
        Put("adapterAngle", Turn);
        var problems = new List<Problem>();
        var adapter = FixingsOperation.ReadAdapter(new FileObject(FileNode.From(body), problems));
        return (problems.Count == 0 ? adapter : null, problems);

        void Put(string key, string typed)
        {
            if (typed.Trim() is { Length: > 0 } text)
            {
                body[key] = text;
            }
        }
    }
}
