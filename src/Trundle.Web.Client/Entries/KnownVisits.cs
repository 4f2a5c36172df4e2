using System.Text.Json.Nodes;
using Microsoft.JSInterop;

namespace Trundle.Web.Client.Entries;

/// <summary>A visit as the host told it before.</summary>
/// <param name="Entries">Its entries.</param>
/// <param name="Beside">The shop's instruments and stock, or null.</param>
/// <param name="Register">The register of condemned tyres and wheels, or null.</param>
public sealed record KnownVisit(JsonArray Entries, JsonObject? Beside, JsonObject? Register);

/// <summary>
/// What the host told this device, kept for a page that is opened with no network, and the program's own files where the browser lets it. Entries lie in a
/// list of the browser's (wwwroot/js/known.js), since a visit has hundreds; what is one text lies beside them.
/// </summary>
public sealed class KnownVisits(IJSRuntime js, Browser browser)
{
    private const string BesideName = "trundle-beside";
    private const string RegisterName = "trundle-register";

    private Task<IJSObjectReference>? _module;
    private string? _beside;

    private Task<IJSObjectReference> Module => _module is null or { IsFaulted: true }
        ? _module = js.InvokeAsync<IJSObjectReference>("import", "/js/known.js").AsTask()
        : _module;

    /// <summary>Keeps what the host told: new entries, and the instruments and the stock where they have changed.</summary>
    public async Task KeepAsync(Guid visit, JsonObject body)
    {
        ArgumentNullException.ThrowIfNull(body);
        if (body["entries"] is JsonArray { Count: > 0 } entries)
        {
            await (await Module).InvokeVoidAsync("know", visit.ToString("D"), entries.ToJsonString());
        }

        var beside = new JsonObject { ["instruments"] = body["instruments"]?.DeepClone(), ["stock"] = body["stock"]?.DeepClone() }.ToJsonString();
        if (beside != _beside)
        {
            _beside = beside;
            await browser.RememberAsync(BesideName, beside);
        }
    }

    /// <summary>Keeps the register of condemned tyres and wheels as the host told it.</summary>
    public Task KeepRegisterAsync(string text) => browser.RememberAsync(RegisterName, text);

    /// <summary>A visit as the host told it before; null where it never did, or where it was forgotten since.</summary>
    public async Task<KnownVisit?> OfAsync(Guid visit)
    {
        var entries = JsonNode.Parse(await (await Module).InvokeAsync<string?>("known", visit.ToString("D")) ?? "[]") as JsonArray ?? [];
        return entries.Count == 0 ? null : new KnownVisit(entries, await RecalledAsync(BesideName), await RecalledAsync(RegisterName));
    }

    /// <summary>What people entered in fields of that ending on the visits that this device knows, the most usual first.</summary>
    public async Task<IReadOnlyList<string>> UsualAsync(string ending) =>
        JsonNode.Parse(await (await Module).InvokeAsync<string?>("usual", ending) ?? "[]") is JsonArray list ? [.. list.Select(v => v!.GetValue<string>())] : [];

    /// <summary>Takes all that the host told off this device; what waits to be sent stays.</summary>
    public async Task ForgetAsync()
    {
        _beside = null;
        await (await Module).InvokeVoidAsync("forgetAll");
        await browser.RememberAsync(BesideName, null);
        await browser.RememberAsync(RegisterName, null);
    }

    /// <summary>Keeps the program's own files, where the browser lets it.</summary>
    public async Task KeepProgramAsync() => await (await Module).InvokeVoidAsync("keepProgram");

    private async Task<JsonObject?> RecalledAsync(string name) => await browser.RecallAsync(name) is { } text ? new HostAnswer(200, text).Body : null;
}
