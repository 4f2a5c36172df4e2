using System.Xml.Linq;
using Microsoft.AspNetCore.DataProtection.Repositories;
using Trundle.Store;

namespace Trundle.Web.Host;

/// <summary>Keeps the host's signing keys in the workshop's store and nowhere else on the machine.</summary>
internal sealed class StoreXmlKeys(HostKeys keys) : IXmlRepository
{
    public IReadOnlyCollection<XElement> GetAllElements() => [.. keys.All().Select(xml => XElement.Parse(xml))];

    public void StoreElement(XElement element, string friendlyName) => keys.Add(friendlyName, element.ToString(SaveOptions.DisableFormatting));
}
