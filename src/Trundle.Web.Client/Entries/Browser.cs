using System.Text.Json.Nodes;
using Microsoft.JSInterop;

namespace Trundle.Web.Client.Entries;

/// <summary>What the host answered; status 0 where it was not reached.</summary>
public sealed record HostAnswer(int Status, string Text)
{
    /// <summary>The status where nobody is signed in on this device.</summary>
    public const int NotSignedIn = 401;

    /// <summary>The host took the request.</summary>
    public bool Good => Status is >= 200 and < 300;

    /// <summary>The body, or null where it is no JSON object.</summary>
    public JsonObject? Body
    {
        get
        {
            try
            {
                return JsonNode.Parse(Text) as JsonObject;
            }
            catch (System.Text.Json.JsonException)
            {
                return null;
            }
        }
    }
}

/// <summary>The functions of wwwroot/js/bay.js. Texts go over in JSON, so that no serializer of types is carried.</summary>
public sealed class Browser(IJSRuntime js)
{
    private Task<IJSObjectReference>? _module;

    /// <summary>The functions, fetched once; where fetching failed it is tried anew.</summary>
    private Task<IJSObjectReference> Module => _module is null or { IsFaulted: true }
        ? _module = js.InvokeAsync<IJSObjectReference>("import", "/js/bay.js").AsTask()
        : _module;

    /// <summary>Keeps entries on this device; false where the browser keeps nothing.</summary>
    public async Task<bool> KeepAsync(JsonArray entries) => await (await Module).InvokeAsync<bool>("keep", entries.ToJsonString());

    /// <summary>The entries not yet sent, and whether this browser keeps any.</summary>
    public async Task<(bool Kept, JsonArray Entries)> WaitingAsync()
    {
        var answer = JsonNode.Parse(await (await Module).InvokeAsync<string>("waiting"))!.AsObject();
        return (answer["kept"]!.GetValue<bool>(), answer["entries"]!.AsArray());
    }

    /// <summary>Takes entries that the host has off the list.</summary>
    public async Task ForgetAsync(IEnumerable<Guid> ids) =>
        await (await Module).InvokeVoidAsync("forget", new JsonArray([.. ids.Select(id => (JsonNode?)id.ToString("D"))]).ToJsonString());

    /// <summary>Marks entries that the host will not take.</summary>
    public async Task RefuseAsync(JsonArray refused) => await (await Module).InvokeVoidAsync("refuse", refused.ToJsonString());

    /// <summary>Asks the host.</summary>
    public async Task<HostAnswer> AskAsync(string method, string address, JsonObject? body = null)
    {
        var answer = JsonNode.Parse(await (await Module).InvokeAsync<string>("ask", method, address, body?.ToJsonString()))!;
        return new HostAnswer(answer["status"]!.GetValue<int>(), answer["text"]!.GetValue<string>());
    }

    /// <summary>Keeps a text on this device under a name, or takes it away; false where the browser keeps nothing, or not so much.</summary>
    public async Task<bool> RememberAsync(string name, string? text) => await (await Module).InvokeAsync<bool>("remember", name, text);

    /// <summary>What was kept under a name, or null.</summary>
    public async Task<string?> RecallAsync(string name) => await (await Module).InvokeAsync<string?>("recall", name);

    /// <summary>Puts the focus on a field, else on the heading.</summary>
    public async Task SettleAsync(string? field) => await (await Module).InvokeVoidAsync("settle", field);

    /// <summary>Has an object told when the network is back.</summary>
    public async Task WatchAsync<T>(DotNetObjectReference<T> bay) where T : class => await (await Module).InvokeVoidAsync("watch", bay);
}
