using System.Text.Json;
using System.Text.Json.Nodes;
using Trundle.Visits.Bay;
using Trundle.Web.Client.Entries;

namespace Trundle.Web.Client.Tools;

/// <summary>A form that belongs to no visit: this browser keeps it, so that a reload loses nothing.</summary>
public sealed class KeptForm : ToolForm
{
    // A browser keeps a few million characters; a recording may be longer, and is chosen anew.
    private const int LongText = 20_000;

    private readonly Browser _browser;
    private VisitFields _fields;
    private KeptHow _kept;
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
    public override string Kept => _kept switch
    {
        KeptHow.Whole => "on this device",
        KeptHow.WithoutLongTexts => "on this device, without the recording",
        KeptHow.Not => "nowhere: leave the page open",
    };

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
        var kept = await KeepAsync(_fields.Newest)
            ? KeptHow.Whole
            : await KeepAsync(_fields.Newest.Where(e => e.Typed.Length < LongText)) ? KeptHow.WithoutLongTexts : KeptHow.Not;
        if (kept != _kept)
        {
            _kept = kept;
            Tell();
        }
    }

    private enum KeptHow
    {
        Whole,
        WithoutLongTexts,
        Not,
    }

    private async Task<bool> KeepAsync(IEnumerable<Entry> entries)
    {
        List<Entry> standing = [.. entries.Where(e => e.Typed.Length > 0)];
        return await _browser.RememberAsync(Name, standing.Count == 0 ? null : new JsonObject(standing.Select(e => KeyValuePair.Create(e.Field, (JsonNode?)JsonValue.Create(e.Typed)))).ToJsonString());
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
