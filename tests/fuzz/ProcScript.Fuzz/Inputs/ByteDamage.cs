using System.Text;

namespace ProcScript.Fuzz.Inputs;

/// <summary>Bytes of the file turned, lost or doubled, as a bad disk or a wrong encoding leaves them.</summary>
internal sealed record ByteDamage() : InputSort("byte")
{
    /// <inheritdoc/>
    protected override string Change(string text, Random random, SeedLibraries seeds)
    {
        List<byte> bytes = [.. Encoding.UTF8.GetBytes(text)];
        for (var times = 1 + random.Next(8); times > 0 && bytes.Count > 0; times--)
        {
            var at = random.Next(bytes.Count);
            switch (random.Next(4))
            {
                case 0:
                    bytes[at] ^= (byte)(1 << random.Next(8));
                    break;
                case 1:
                    bytes[at] = (byte)random.Next(256);
                    break;
                case 2:
                    bytes.RemoveRange(at, Math.Min(1 + random.Next(16), bytes.Count - at));
                    break;
                default:
                    bytes.InsertRange(at, bytes.GetRange(at, Math.Min(1 + random.Next(16), bytes.Count - at)));
                    break;
            }
        }

        return Encoding.UTF8.GetString([.. bytes]);
    }
}
