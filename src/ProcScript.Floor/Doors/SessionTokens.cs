using System.Buffers.Text;
using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace ProcScript.Floor.Doors;

/// <summary>
/// What a paired tablet shows with every request: who it is, until when, and a seal that only this server can make. The server remembers no tablet,
/// so that all stay paired when it is started again; without its key, none does.
/// </summary>
/// <param name="key">The key.</param>
/// <param name="clock">The clock.</param>
public sealed class SessionTokens(byte[] key, TimeProvider clock)
{
    /// <summary>How long a tablet stays paired.</summary>
    public static readonly TimeSpan Life = TimeSpan.FromDays(90);

    private const int IdBytes = 9;
    private const int KeyBytes = 32;

    /// <summary>Reads the key of a server, and makes one where there is none.</summary>
    /// <param name="path">The file.</param>
    /// <param name="clock">The clock.</param>
    public static SessionTokens In(string path, TimeProvider clock)
    {
        if (!File.Exists(path))
        {
            OwnerFile.Write(path, RandomNumberGenerator.GetBytes(KeyBytes));
        }

        var key = File.ReadAllBytes(path);
        return key.Length == KeyBytes ? new SessionTokens(key, clock) : throw new IOException($"'{path}' is no key of this server. Delete it, and pair the tablets again.");
    }

    /// <summary>Makes a token.</summary>
    public string Make()
    {
        var body = string.Create(CultureInfo.InvariantCulture, $"{Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(IdBytes))}.{(clock.GetUtcNow() + Life).ToUnixTimeSeconds()}");
        return $"{body}.{Seal(body)}";
    }

    /// <summary>Who a token is of; null where it is forged or over.</summary>
    /// <param name="token">The token.</param>
    public string? Who(string? token)
    {
        if (token is not { Length: < 200 } || token.Split('.') is not [var id, var until, var seal])
        {
            return null;
        }

        var isOurs = CryptographicOperations.FixedTimeEquals(Encoding.UTF8.GetBytes(Seal($"{id}.{until}")), Encoding.UTF8.GetBytes(seal));
        return isOurs && long.TryParse(until, NumberStyles.None, CultureInfo.InvariantCulture, out var seconds) && seconds > clock.GetUtcNow().ToUnixTimeSeconds() ? id : null;
    }

    private string Seal(string body) => Base64Url.EncodeToString(HMACSHA256.HashData(key, Encoding.UTF8.GetBytes(body)));
}
