using System.Reflection;

namespace ProcScript.Cli;

/// <summary>The version of this program.</summary>
internal static class ProductVersion
{
    /// <summary>As the build states it, such as <c>0.1.0</c>.</summary>
    public static string Text { get; } =
        typeof(ProductVersion).Assembly.GetCustomAttribute<AssemblyInformationalVersionAttribute>()?.InformationalVersion ?? "unknown";

    /// <summary>The program with its version.</summary>
    public static string Program => $"procscript {Text}";
}
