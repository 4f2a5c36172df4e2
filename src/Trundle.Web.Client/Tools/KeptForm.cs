using System.Text.Json;
using System.Text.Json.Nodes;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tools;

/// <summary>A form that belongs to no visit: this browser keeps it, so that a reload loses nothing.</summary>
public sealed class KeptForm : ToolForm
{
    private readonly Browser _browser;
    private VisitFields _fields;
    private bool _keeps = true;
    private long _moment;

    private KeptForm(Tool tool, Browser browser, UnitHabits units, IEnumerable<(string Field, string Typed)> kept) : base(tool)
    {
        (_browser, Units) = (browser, units);
        _fields = VisitFields.Of(kept.Select(k => Make(k.Field, k.Typed)));
    }

    /// <inheritdoc />
    public override VisitFields Fields => _fields;

    /// <inheritdoc />
    public override UnitHabits Units { get; }

    /// <inheritdoc />
    public override string Kept => _keeps ? "on this device" : "nowhere: leave the page open";

    private string Name => $"trundle-{Tool.Key}";

    /// <summary>Opens what this browser keeps.</summary>
    public static async Task<KeptForm> OpenAsync(Tool tool, Browser browser, UnitHabits units)
    {
        ArgumentNullException.ThrowIfNull(tool);
        ArgumentNullException.ThrowIfNull(browser);
        return new KeptForm(tool, browser, units, Read(await browser.RecallAsync($"trundle-{tool.Key}")));
    }

    /// <inheritdoc />
    public override async Task EnterAsync(params (string Field, string Typed)[] texts)
    {
        ArgumentNullException.ThrowIfNull(texts);
        _fields = _fields.With(texts.Select(t => Make(t.Field, t.Typed)));
        Tell();
        _keeps = await _browser.RememberAsync(Name, IsBlank ? null : new JsonObject(_fields.Newest.Where(e => e.Typed.Length > 0).Select(e => KeyValuePair.Create(e.Field, (JsonNode?)JsonValue.Create(e.Typed)))).ToJsonString());
        if (!_keeps)
        {
            Tell();
        }
    }

    private static IEnumerable<(string, string)> Read(string? kept)
    {
        if (kept is null)
        {
            return [];
        }

        try
        {
            return [.. (JsonNode.Parse(kept) as JsonObject ?? []).Where(p => p.Value is JsonValue v && v.TryGetValue<string>(out _)).Select(p => (p.Key, p.Value!.GetValue<string>()))];
        }
        catch (JsonException)
        {
            // What another program wrote there is not ours.
            return [];
        }
    }

    private Entry Make(string field, string typed) => new(Guid.Empty, field, typed, "", Role.Technician, DateTimeOffset.FromUnixTimeMilliseconds(++_moment));
}
