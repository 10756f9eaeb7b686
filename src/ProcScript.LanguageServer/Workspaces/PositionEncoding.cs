namespace ProcScript.LanguageServer.Workspaces;

/// <summary>What the characters of a position count.</summary>
internal enum PositionEncoding
{
    /// <summary>UTF-16 code units.</summary>
    Utf16,

    /// <summary>Bytes.</summary>
    Utf8,
}

/// <summary>The encodings by the protocol's names.</summary>
internal static class PositionEncodings
{
    /// <summary>The name of <see cref="PositionEncoding.Utf8"/>.</summary>
    public const string Utf8 = "utf-8";

    /// <summary>The protocol's name.</summary>
    public static string NameOf(PositionEncoding encoding) => encoding == PositionEncoding.Utf8 ? Utf8 : "utf-16";
}
