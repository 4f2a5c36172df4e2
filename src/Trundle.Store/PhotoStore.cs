using Microsoft.EntityFrameworkCore;
using Trundle.Measures;
using Trundle.Store.Database;

namespace Trundle.Store;

/// <summary>A photograph of a visit, without its bytes.</summary>
/// <param name="Id">Made where it was taken.</param>
/// <param name="Type">Its media type.</param>
/// <param name="Width">In pixels.</param>
/// <param name="Height">In pixels.</param>
/// <param name="Bytes">How many bytes.</param>
/// <param name="By">Who took it.</param>
/// <param name="At">When the store took it.</param>
public sealed record StoredPhoto(Guid Id, string Type, int Width, int Height, int Bytes, string By, DateTimeOffset At);

/// <summary>The photographs of visits.</summary>
public sealed class PhotoStore
{
    /// <summary>The most photographs of one visit.</summary>
    public const int MostOnVisit = 60;

    private readonly StoreFile _file;

    internal PhotoStore(StoreFile file) => _file = file;

    /// <summary>Takes a photograph. The same identifier with the same picture is taken once.</summary>
    /// <returns>The photograph, or the problem.</returns>
    public Reading<StoredPhoto> Add(Guid visit, Guid id, byte[] bytes, string by, DateTimeOffset now)
    {
        return PictureBytes.Read(bytes).Then(picture =>
        {
            using var context = _file.Context();
            using var transaction = context.Database.BeginTransaction();
            if (!context.Visits.Any(v => v.Id == visit))
            {
                return Failed("visit", "visit-unknown", "There is no such visit in this workshop.");
            }

            if (context.Photos.AsNoTracking().SingleOrDefault(p => p.Id == id) is { } there)
            {
                return there.VisitId == visit && there.Bytes.AsSpan().SequenceEqual(picture.Bytes)
                    ? Reading<StoredPhoto>.Of(Of(there))
                    : Failed("photo", "photo-id-taken", "This identifier stands for another photograph; an identifier is made once, for one photograph.");
            }

            if (context.Photos.Count(p => p.VisitId == visit) >= MostOnVisit)
            {
                return Failed("photo", "too-many", FormattableString.Invariant($"There are {MostOnVisit} photographs of this visit already; no more are kept."));
            }

            var row = new PhotoRow { Id = id, VisitId = visit, Type = picture.Type, Width = picture.Width, Height = picture.Height, Bytes = picture.Bytes, By = by, At = now };
            context.Photos.Add(row);
            context.SaveChanges();
            transaction.Commit();
            return Reading<StoredPhoto>.Of(Of(row));
        });
    }

    /// <summary>A photograph with its bytes, or null.</summary>
    public (StoredPhoto Photo, byte[] Bytes)? Find(Guid visit, Guid id)
    {
        using var context = _file.Context();
        return context.Photos.AsNoTracking().SingleOrDefault(p => p.Id == id && p.VisitId == visit) is { } row ? (Of(row), row.Bytes) : null;
    }

    /// <summary>The identifiers of a visit's photographs.</summary>
    public IReadOnlySet<Guid> Ids(Guid visit)
    {
        using var context = _file.Context();
        return context.Photos.AsNoTracking().Where(p => p.VisitId == visit).Select(p => p.Id).ToHashSet();
    }

    /// <summary>Every photograph of a visit by its identifier.</summary>
    public IReadOnlyDictionary<Guid, byte[]> Of(Guid visit)
    {
        using var context = _file.Context();
        return context.Photos.AsNoTracking().Where(p => p.VisitId == visit).ToDictionary(p => p.Id, p => p.Bytes);
    }

    /// <summary>Erases a photograph; the entry that names it stays.</summary>
    /// <returns>True where there was one.</returns>
    public bool Erase(Guid visit, Guid id)
    {
        using (var context = _file.Context())
        {
            if (context.Photos.SingleOrDefault(p => p.Id == id && p.VisitId == visit) is not { } row)
            {
                return false;
            }

            context.Photos.Remove(row);
            context.SaveChanges();
        }

        _file.Truncate();
        return true;
    }

    private static StoredPhoto Of(PhotoRow row) => new(row.Id, row.Type, row.Width, row.Height, row.Bytes.Length, row.By, row.At);

    private static Reading<StoredPhoto> Failed(string where, string code, string message) => Reading<StoredPhoto>.Failed(new Problem(where, code, message));
}
