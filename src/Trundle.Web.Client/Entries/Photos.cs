using System.Text.Json.Nodes;
using Microsoft.JSInterop;

namespace Trundle.Web.Client.Entries;

/// <summary>A photograph on this device that the host does not have yet.</summary>
/// <param name="Id">Made here.</param>
/// <param name="Visit">Of which visit.</param>
/// <param name="Preview">A small picture of it, as a data address.</param>
/// <param name="Refused">Why the host will not take it, or null.</param>
public sealed record WaitingPhoto(Guid Id, Guid Visit, string Preview, string? Refused);

/// <summary>Photographs on their way: made smaller and kept by the browser the moment they are taken, sent one by one until the host has them.</summary>
public sealed class Photos(IJSRuntime js)
{
    private readonly List<WaitingPhoto> _waiting = [];
    private readonly Dictionary<Guid, string> _previews = [];
    private Task<IJSObjectReference>? _module;
    private bool _sending;

    /// <summary>Those not yet sent, of every visit.</summary>
    public IReadOnlyList<WaitingPhoto> Waiting => _waiting;

    /// <summary>False where the browser keeps none: then one that is not sent lives only as long as the page.</summary>
    public bool Keeps { get; private set; } = true;

    private Task<IJSObjectReference> Module => _module is null or { IsFaulted: true }
        ? _module = js.InvokeAsync<IJSObjectReference>("import", "/js/photos.js").AsTask()
        : _module;

    /// <summary>Where the picture is shown from: this device while the host has it not, then the host.</summary>
    public string Address(Guid visit, Guid id) => _previews.GetValueOrDefault(id) ?? HostAddress(visit, id);

    /// <summary>The photograph's own address at the host.</summary>
    public static string HostAddress(Guid visit, Guid id) => $"/api/v1/visits/{visit:D}/photos/{id:D}";

    /// <summary>Takes up what an earlier page on this device left unsent.</summary>
    public async Task OpenAsync()
    {
        if (await (await Module).InvokeAsync<string?>("waitingPhotos") is not { } text || JsonNode.Parse(text) is not JsonArray list)
        {
            return;
        }

        foreach (var json in list.OfType<JsonObject>())
        {
            if (Guid.TryParse(json["id"]?.GetValue<string>(), out var id) && Guid.TryParse(json["visit"]?.GetValue<string>(), out var visit) && _waiting.All(w => w.Id != id))
            {
                Add(id, visit, json["preview"]?.GetValue<string>() ?? "");
            }
        }
    }

    /// <summary>Takes the picture that was chosen in a control.</summary>
    /// <returns>Null where it was taken, else why not, in one sentence.</returns>
    public async Task<string?> TakeAsync(string control, Guid id, Guid visit)
    {
        var answer = JsonNode.Parse(await (await Module).InvokeAsync<string>("takePhoto", control, id.ToString("D"), visit.ToString("D")))!;
        if (answer["wrong"]?.GetValue<string>() is { } wrong)
        {
            return wrong switch
            {
                "too-large" => "This picture is too large to be made smaller here; take it with fewer pixels.",
                "none" => "No picture was chosen.",
                _ => "This is no picture that the browser can read; take a photograph, or choose a JPEG or PNG.",
            };
        }

        Keeps = answer["kept"]?.GetValue<bool>() ?? false;
        Add(id, visit, answer["preview"]?.GetValue<string>() ?? "");
        return null;
    }

    /// <summary>Sends what waits, one by one, until the host has all or does not answer.</summary>
    /// <returns>True where something went or was refused.</returns>
    public async Task<bool> SendAsync()
    {
        if (_sending || _waiting.All(w => w.Refused is not null))
        {
            return false;
        }

        _sending = true;
        var changed = false;
        try
        {
            foreach (var photo in _waiting.Where(w => w.Refused is null).ToList())
            {
                var answer = JsonNode.Parse(await (await Module).InvokeAsync<string>("sendPhoto", photo.Id.ToString("D"), HostAddress(photo.Visit, photo.Id)))!;
                var status = answer["status"]!.GetValue<int>();
                if (status is 0 or HostAnswer.NotSignedIn or >= 500)
                {
                    break;
                }

                changed = true;
                var at = _waiting.IndexOf(photo);
                if (status is >= 200 and < 300 or 410)
                {
                    _waiting.RemoveAt(at);
                }
                else
                {
                    _waiting[at] = photo with { Refused = new HostAnswer(status, answer["text"]!.GetValue<string>()).Body?["error"]?["message"]?.GetValue<string>() ?? "The workshop's computer did not take this photograph." };
                }
            }
        }
        finally
        {
            _sending = false;
        }

        return changed;
    }

    /// <summary>Takes a photograph that the host does not have off this device.</summary>
    public async Task ForgetAsync(Guid id)
    {
        _waiting.RemoveAll(w => w.Id == id);
        _previews.Remove(id);
        await (await Module).InvokeVoidAsync("forgetPhoto", id.ToString("D"));
    }

    private void Add(Guid id, Guid visit, string preview)
    {
        _waiting.Add(new WaitingPhoto(id, visit, preview, null));
        _previews[id] = preview;
    }
}
