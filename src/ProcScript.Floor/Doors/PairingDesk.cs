using System.Globalization;
using System.Security.Cryptography;
using System.Text;

namespace ProcScript.Floor.Doors;

/// <summary>
/// Lets a tablet in by a code that is printed where only the shop sees it. A code works once. Guessing does not pay: a tablet has a few tries a
/// minute, and after some wrong ones of anybody the code is another.
/// </summary>
/// <param name="clock">The clock.</param>
public sealed class PairingDesk(TimeProvider clock)
{
    /// <summary>How many digits a code has.</summary>
    public const int Digits = 8;

    /// <summary>The tries that one address has in a minute.</summary>
    public const int TriesInAMinute = 5;

    /// <summary>The wrong tries, of all together, after which the code is another: with eight digits one in five million guesses right before.</summary>
    public const int TriesOfACode = 20;

    private const int MostAddresses = 10_000;
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    private readonly Lock _lock = new();
    private readonly Dictionary<string, (DateTimeOffset Since, int Tries)> _tries = new(StringComparer.Ordinal);
    private int _wrong;

    /// <summary>Tells of every new code.</summary>
    public event Action<string>? CodeChanged;

    /// <summary>The code that works now.</summary>
    public string Code { get; private set; } = NewCode();

    /// <summary>A code as people read it.</summary>
    /// <param name="code">The code.</param>
    public static string Spaced(string code)
    {
        ArgumentNullException.ThrowIfNull(code);
        return $"{code[..(Digits / 2)]} {code[(Digits / 2)..]}";
    }

    /// <summary>Tries a code.</summary>
    /// <param name="address">Where the try comes from.</param>
    /// <param name="code">The code as it was entered.</param>
    /// <exception cref="RefusedException">It is not the one, or it is too soon to try again.</exception>
    public void Try(string address, string code)
    {
        ArgumentNullException.ThrowIfNull(address);
        ArgumentNullException.ThrowIfNull(code);
        string? changed = null;
        var isRight = false;
        lock (_lock)
        {
            Count(address);
            // Digits alone count, so that a code may be entered as it is printed.
            var entered = new string([.. code.Where(char.IsAsciiDigit).Take(2 * Digits)]);
            isRight = CryptographicOperations.FixedTimeEquals(Encoding.ASCII.GetBytes(entered), Encoding.ASCII.GetBytes(Code));
            _wrong = isRight ? 0 : _wrong + 1;
            if (isRight || _wrong >= TriesOfACode)
            {
                (Code, _wrong) = (NewCode(), 0);
                changed = Code;
            }
        }

        if (changed is not null)
        {
            CodeChanged?.Invoke(changed);
        }

        if (!isRight)
        {
            throw new RefusedException(StatusCodes.Status403Forbidden, "That is not the code. The server has printed the one that works now; each works once.");
        }
    }

    private void Count(string address)
    {
        var now = clock.GetUtcNow();
        if (_tries.Count >= MostAddresses)
        {
            foreach (var old in _tries.Where(tried => now - tried.Value.Since >= Minute).Select(tried => tried.Key).ToList())
            {
                _tries.Remove(old);
            }
        }

        var (since, tries) = _tries.GetValueOrDefault(address, (now, 0));
        (since, tries) = now - since >= Minute ? (now, 1) : (since, tries + 1);
        if (tries > TriesInAMinute || _tries.Count >= MostAddresses)
        {
            throw new RefusedException(StatusCodes.Status429TooManyRequests, "Too many codes were tried. Wait a minute, then enter the one that the server has printed last.");
        }

        _tries[address] = (since, tries);
    }

    private static string NewCode() => RandomNumberGenerator.GetInt32(100_000_000).ToString("D8", CultureInfo.InvariantCulture);
}
