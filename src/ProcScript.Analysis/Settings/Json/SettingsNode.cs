using System.Collections.Immutable;
using ProcScript.Syntax.Text;

namespace ProcScript.Analysis.Settings.Json;

/// <summary>A value of a settings file, with its place.</summary>
/// <param name="Span">From its first to its last character.</param>
internal abstract record SettingsNode(TextSpan Span)
{
    /// <summary>What it is, as a finding says it: <c>a number</c>.</summary>
    public abstract string Sort { get; }
}

/// <summary>Members between braces.</summary>
/// <param name="Span">From brace to brace.</param>
/// <param name="Members">The members, in order.</param>
internal sealed record ObjectNode(TextSpan Span, ImmutableArray<SettingsMember> Members) : SettingsNode(Span)
{
    /// <inheritdoc/>
    public override string Sort => "an object in braces";
}

/// <summary>Values between brackets.</summary>
/// <param name="Span">From bracket to bracket.</param>
/// <param name="Items">The values, in order.</param>
internal sealed record ListNode(TextSpan Span, ImmutableArray<SettingsNode> Items) : SettingsNode(Span)
{
    /// <inheritdoc/>
    public override string Sort => "a list";
}

/// <summary>A text in quotes.</summary>
/// <param name="Span">From quote to quote.</param>
/// <param name="Value">The text.</param>
internal sealed record TextNode(TextSpan Span, string Value) : SettingsNode(Span)
{
    /// <inheritdoc/>
    public override string Sort => "a text";
}

/// <summary>A number.</summary>
/// <param name="Span">Its place.</param>
/// <param name="Value">The number.</param>
internal sealed record NumberNode(TextSpan Span, double Value) : SettingsNode(Span)
{
    /// <inheritdoc/>
    public override string Sort => "a number";
}

/// <summary><c>true</c>, <c>false</c> or <c>null</c>.</summary>
/// <param name="Span">Its place.</param>
/// <param name="Word">The word.</param>
internal sealed record WordNode(TextSpan Span, string Word) : SettingsNode(Span)
{
    /// <inheritdoc/>
    public override string Sort => $"`{Word}`";
}

/// <summary>A key with its value.</summary>
/// <param name="Key">The key.</param>
/// <param name="KeySpan">The key with its quotes.</param>
/// <param name="Value">The value.</param>
internal readonly record struct SettingsMember(string Key, TextSpan KeySpan, SettingsNode Value);
