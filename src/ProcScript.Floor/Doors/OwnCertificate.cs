using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace ProcScript.Floor.Doors;

/// <summary>The certificate for the shop's network: the shop's own, or one that the server has made and signed itself.</summary>
internal static class OwnCertificate
{
    private static readonly TimeSpan Life = TimeSpan.FromDays(397);
    private static readonly TimeSpan Renewed = TimeSpan.FromDays(30);
    private const string ServerUse = "1.3.6.1.5.5.7.3.1";

    /// <summary>The certificate to serve with.</summary>
    /// <param name="options">What the server was started with.</param>
    /// <param name="hosts">The names and addresses that it has to be good for.</param>
    /// <param name="clock">The clock.</param>
    public static X509Certificate2 Of(FloorOptions options, IReadOnlyCollection<string> hosts, TimeProvider clock)
    {
        if (options.Certificate is { } file)
        {
            return X509Certificate2.CreateFromPemFile(file, options.Key);
        }

        var (certificate, key) = (Path.Combine(options.OwnFolder, "certificate.pem"), Path.Combine(options.OwnFolder, "certificate.key"));
        if (File.Exists(certificate) && File.Exists(key))
        {
            var there = X509Certificate2.CreateFromPemFile(certificate, key);
            if (there.NotAfter.ToUniversalTime() - clock.GetUtcNow() > Renewed && hosts.All(host => there.MatchesHostname(host)))
            {
                return there;
            }

            there.Dispose();
        }

        using var made = Make(hosts, clock);
        using var secret = made.GetECDsaPrivateKey()!;
        OwnerFile.Write(key, System.Text.Encoding.ASCII.GetBytes(secret.ExportPkcs8PrivateKeyPem()));
        OwnerFile.Write(certificate, System.Text.Encoding.ASCII.GetBytes(made.ExportCertificatePem()));
        return X509Certificate2.CreateFromPemFile(certificate, key);
    }

    /// <summary>The fingerprint, in pairs of digits, as browsers show it.</summary>
    public static string Fingerprint(X509Certificate2 certificate) => string.Join(':', Convert.ToHexString(SHA256.HashData(certificate.RawData)).Chunk(2).Select(pair => new string(pair)));

    private static X509Certificate2 Make(IReadOnlyCollection<string> hosts, TimeProvider clock)
    {
        using var key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new("CN=procscript-floor", key, HashAlgorithmName.SHA256);
        SubjectAlternativeNameBuilder names = new();
        foreach (var host in hosts)
        {
            if (IPAddress.TryParse(host, out var address))
            {
                names.AddIpAddress(address);
            }
            else
            {
                names.AddDnsName(host);
            }
        }

        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(certificateAuthority: false, hasPathLengthConstraint: false, 0, critical: true));
        request.CertificateExtensions.Add(new X509KeyUsageExtension(X509KeyUsageFlags.DigitalSignature, critical: true));
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid(ServerUse)], critical: false));
        var now = clock.GetUtcNow();
        return request.CreateSelfSigned(now.AddDays(-1), now + Life);
    }
}
