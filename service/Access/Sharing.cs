using System.Net;

namespace WireCoach.Service.Access;

/// <summary>How the service is shared on a network: one address, HTTPS or a stated proxy that does it, and codes to sign in with.</summary>
/// <param name="Address">The one address to listen on.</param>
/// <param name="Hosts">The names by which browsers may call it.</param>
/// <param name="Proxy">The proxy that speaks HTTPS in front of it, or none.</param>
/// <param name="Certificate">The certificate's PEM file, where there is no proxy.</param>
/// <param name="Key">The PEM file of its key; the certificate's file where it holds both.</param>
internal sealed record Sharing(Uri Address, IReadOnlyList<string> Hosts, IPAddress? Proxy, string? Certificate, string? Key)
{
    private static readonly char[] Separators = [';', ',', ' '];

    /// <summary>How it is shared, or <see langword="null"/> when it is for this machine only, as it is unless <c>Sharing:Address</c> is set.</summary>
    /// <exception cref="SharingException">It would be reachable without what sharing takes.</exception>
    public static Sharing? Read(IConfiguration configuration, AccessCodes codes)
    {
        if (configuration["Sharing:Address"] is not { Length: > 0 } text)
        {
            OnlyHere(configuration["urls"]);
            return null;
        }

        if (!Uri.TryCreate(text, UriKind.Absolute, out var address) || address.Scheme is not ("http" or "https"))
        {
            throw new SharingException($"Sharing:Address is no address such as https://192.168.7.20:5443: {text}.");
        }

        var proxy = Proxied(configuration["Sharing:Proxy"]);
        var certificate = configuration["Sharing:Certificate"];
        if (address.Scheme == "http" && proxy is null)
        {
            throw new SharingException("Sharing without HTTPS would show the access codes to the network: use https in Sharing:Address with a Sharing:Certificate, or name the proxy that speaks HTTPS as Sharing:Proxy.");
        }

        if (address.Scheme == "https" && !File.Exists(certificate))
        {
            throw new SharingException("Sharing over HTTPS needs a certificate: name its PEM file as Sharing:Certificate and its key's as Sharing:CertificateKey.");
        }

        if (!codes.Has(AccessRole.Manager) || !codes.Has(AccessRole.Technician))
        {
            throw new SharingException("Sharing needs an access code for the manager and one for technicians: set each with the command 'access-code manager' and 'access-code technician'.");
        }

        var hosts = (configuration["Sharing:Hosts"] ?? string.Empty).Split(Separators, StringSplitOptions.RemoveEmptyEntries);
        return hosts.Contains("*", StringComparer.Ordinal)
            ? throw new SharingException("Sharing:Hosts must name the hosts; * would let any page on the web call this service by a name of its own.")
            : new(address, [address.Host, .. hosts], proxy, certificate, configuration["Sharing:CertificateKey"]);
    }

    /// <summary>Without sharing, every address must be this machine's own.</summary>
    private static void OnlyHere(string? urls)
    {
        foreach (var url in (urls ?? string.Empty).Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
        {
            if (!IsLoopback(BindingAddress.Parse(url).Host))
            {
                throw new SharingException($"The address {url} can be reached from the network. To share the service, set Sharing:Address instead, with HTTPS and access codes.");
            }
        }
    }

    private static bool IsLoopback(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host.Trim('[', ']'), out var address) && IPAddress.IsLoopback(address));

    private static IPAddress? Proxied(string? text) => string.IsNullOrWhiteSpace(text) ? null
        : IPAddress.TryParse(text, out var proxy) ? proxy
        : throw new SharingException($"Sharing:Proxy must be the proxy's IP address, not {text}.");
}
