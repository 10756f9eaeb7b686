using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;
using ProcScript.Model;
using ProcScript.Model.Procedures;

namespace ProcScript.Analysis.Totals;

/// <summary>The short name of what a plan was made from: paper with another revision is void.</summary>
internal static class SourceRevision
{
    private const int Digits = 10;

    /// <summary>The first digits of SHA-256 over the files of the procedure, byte for byte, its variant and its arguments.</summary>
    public static string Of(Procedure procedure, Library library)
    {
        using var hash = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        AppendAll(hash, procedure.Files, path =>
        {
            Append(hash, path);
            Append(hash, library.Trees[path].Text.Written);
        });
        AppendAll(hash, procedure.Machine.With, option => Append(hash, option.Name));
        AppendAll(hash, procedure.Arguments, argument => Append(hash, argument));
        return Convert.ToHexStringLower(hash.GetHashAndReset())[..Digits];
    }

    /// <summary>With its count in front, so that no list runs into the next.</summary>
    private static void AppendAll<T>(IncrementalHash hash, IReadOnlyCollection<T> items, Action<T> append)
    {
        AppendLength(hash, items.Count);
        foreach (var item in items)
        {
            append(item);
        }
    }

    /// <summary>With its length in front, so that no text runs into the next.</summary>
    private static void Append(IncrementalHash hash, string text)
    {
        var bytes = Encoding.UTF8.GetBytes(text);
        AppendLength(hash, bytes.Length);
        hash.AppendData(bytes);
    }

    private static void AppendLength(IncrementalHash hash, int length)
    {
        Span<byte> bytes = stackalloc byte[sizeof(int)];
        BinaryPrimitives.WriteInt32LittleEndian(bytes, length);
        hash.AppendData(bytes);
    }
}
