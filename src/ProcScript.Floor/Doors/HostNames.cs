using System.Collections.Frozen;
using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;

namespace ProcScript.Floor.Doors;

/// <summary>
/// The names by which the server is reached. A request under another comes from a page that has had its own name lead here, or is not meant for us.
/// </summary>
public sealed class HostNames
{
    private static readonly string[] Loopback = ["localhost", "127.0.0.1", "::1"];

    private readonly FrozenSet<string> _names;

    private HostNames(IEnumerable<string> names) => _names = names.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>All of them; addresses without brackets.</summary>
    public IReadOnlyCollection<string> All => _names;

    /// <summary>The names of a server.</summary>
    /// <param name="options">What it was started with.</param>
    public static HostNames Of(FloorOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        return new HostNames(options.Lan ? [.. Loopback, .. OwnNames(), .. OwnAddresses(), .. options.Names] : [.. Loopback, .. options.Names]);
    }

    /// <summary>Whether a request is meant for us.</summary>
    /// <param name="host">The host that it names.</param>
    public bool Has(HostString host) => host.HasValue && _names.Contains(host.Host.Trim('[', ']'));

    /// <summary>The addresses of this machine in its networks.</summary>
    public static IEnumerable<string> OwnAddresses() =>
        NetworkInterface.GetAllNetworkInterfaces().Where(card => card.OperationalStatus == OperationalStatus.Up)
            .SelectMany(card => card.GetIPProperties().UnicastAddresses).Select(one => one.Address)
            .Where(address => !IPAddress.IsLoopback(address) && (address.AddressFamily == AddressFamily.InterNetwork || !address.IsIPv6LinkLocal))
            .Select(address => address.ToString()).Distinct(StringComparer.Ordinal);

    private static IEnumerable<string> OwnNames()
    {
        var name = Dns.GetHostName().ToLowerInvariant();
        return Uri.CheckHostName(name) == UriHostNameType.Dns ? name.Contains('.', StringComparison.Ordinal) ? [name] : [name, $"{name}.local"] : [];
    }
}
