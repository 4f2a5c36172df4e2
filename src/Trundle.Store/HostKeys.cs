using Trundle.Store.Database;

namespace Trundle.Store;

/// <summary>The keys with which the host signs its forms: kept with the store, so that a form that was open outlives a restart.</summary>
public sealed class HostKeys
{
    private readonly StoreFile _file;

    internal HostKeys(StoreFile file) => _file = file;

    /// <summary>Every key, as XML.</summary>
    public IReadOnlyList<string> All()
    {
        using var context = _file.Context();
        return [.. context.HostKeys.OrderBy(k => k.Id).Select(k => k.Xml)];
    }

    /// <summary>Keeps a key.</summary>
    public void Add(string name, string xml)
    {
        using var context = _file.Context();
        context.HostKeys.Add(new HostKeyRow { Name = name, Xml = xml });
        context.SaveChanges();
    }
}
