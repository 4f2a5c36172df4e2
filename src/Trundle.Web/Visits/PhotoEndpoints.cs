using System.Globalization;
using System.Text.Json.Nodes;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Trundle.Measures;
using Trundle.Store;
using Trundle.Web.Api;
using Trundle.Web.People;

namespace Trundle.Web.Visits;

/// <summary>The photographs of a visit: taken by PUT under an identifier made on the device, shown by GET.</summary>
internal static class PhotoEndpoints
{
    public static void MapPhotos(this RouteGroupBuilder visits)
    {
        visits.MapPut("/{id:guid}/photos/{photo:guid}", TakeAsync);
        visits.MapGet("/{id:guid}/photos/{photo:guid}", Show);
    }

    private static async Task<IResult> TakeAsync(Guid id, Guid photo, HttpContext context, WorkshopStore store, TimeProvider clock)
    {
        var by = WhoEnters.On(context, store)?.Name
            ?? store.People.All().FirstOrDefault(p => string.Equals(p.Name, context.Request.Query["by"], StringComparison.OrdinalIgnoreCase))?.Name;
        if (by is null)
        {
            return ApiAnswer.Wrong(new Problem("by", "person-unknown", "Choose who enters: one of the people of this workshop."));
        }

        if (context.Request.ContentType is not (PictureBytes.Jpeg or PictureBytes.Png))
        {
            return ApiAnswer.Wrong(new Problem("content-type", "not-a-picture", "Send a photograph as image/jpeg or image/png."), StatusCodes.Status415UnsupportedMediaType);
        }

        // One byte more than is kept is enough to tell that it is too large.
        var bytes = new byte[PictureBytes.MostBytes + 1];
        var length = await context.Request.Body.ReadAtLeastAsync(bytes, bytes.Length, throwOnEndOfStream: false, context.RequestAborted).ConfigureAwait(false);
        if (length == bytes.Length)
        {
            return ApiAnswer.Wrong(new Problem("photo", "photo-too-large", string.Create(CultureInfo.InvariantCulture, $"The photograph has more than {PictureBytes.MostBytes / 1_000_000} MB, which is the most that is kept. Take it smaller.")), StatusCodes.Status413PayloadTooLarge);
        }

        return store.Photos.Add(id, photo, bytes[..length], by, clock.GetUtcNow()).Match(
            kept => ApiAnswer.Json(new JsonObject { ["id"] = kept.Id.ToString("D"), ["type"] = kept.Type, ["width"] = kept.Width, ["height"] = kept.Height, ["bytes"] = kept.Bytes, ["by"] = kept.By, ["at"] = VisitJson.Time(kept.At) }),
            problem => ApiAnswer.Wrong(problem, problem.Code == "visit-unknown" ? StatusCodes.Status404NotFound : StatusCodes.Status400BadRequest));
    }

    private static IResult Show(Guid id, Guid photo, HttpContext context, WorkshopStore store)
    {
        if (store.Photos.Find(id, photo) is not { } found)
        {
            return ApiAnswer.Wrong(new Problem("photo", "photo-unknown", "The workshop has no such photograph of this visit; it may still be on a device."), StatusCodes.Status404NotFound);
        }

        // An identifier stands for one picture for good.
        context.Response.Headers.CacheControl = "private, max-age=31536000, immutable";
        return Results.Bytes(found.Bytes, found.Photo.Type);
    }
}
