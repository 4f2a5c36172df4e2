using Trundle.Measures;
using Trundle.Store;
using Trundle.Visits.Files;

namespace Trundle.Cli;

/// <summary>The photographs of a visit in a folder: <c>0b9f6c1e-….jpg</c> for the one that the file calls so.</summary>
internal static class PhotoFolder
{
    private static readonly string[] Endings = [".jpg", ".jpeg", ".png"];

    /// <summary>Those that the visit's file names and that lie in the folder; one that does not is left out, and the sheet says so.</summary>
    public static Dictionary<Guid, byte[]> Read(string folder, FileNode visit)
    {
        if (!Directory.Exists(folder))
        {
            throw new InputProblemException(new Problem("--photos", "folder-unknown", $"There is no folder '{NumberText.Shown(folder)}'; name the one in which the photographs lie."));
        }

        var photos = new Dictionary<Guid, byte[]>();
        foreach (var id in VisitFileReader.Read(visit, []).Arrival.Photos)
        {
            if (Endings.Select(e => Path.Combine(folder, $"{id:D}{e}")).FirstOrDefault(File.Exists) is { } path)
            {
                photos[id] = PictureBytes.Read(File.ReadAllBytes(path)).Match(p => p.Bytes, problem => throw new InputProblemException(problem.At(path)));
            }
        }

        return photos;
    }
}
