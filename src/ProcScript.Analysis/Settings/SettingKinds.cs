using System.Collections.Immutable;
using System.Globalization;
using System.Text.Json;
using ProcScript.Analysis.Rules.Settings;
using ProcScript.Analysis.Settings.Json;
using ProcScript.Model.Quantities;
using ProcScript.Model.Rules.Wording;
using ProcScript.Model.Sources;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Analysis.Settings;

/// <summary>A setting that is one of a few words.</summary>
/// <typeparam name="T">What the words stand for.</typeparam>
public sealed class ChoiceSetting<T> : Setting<T>, IChoiceSetting
    where T : struct, Enum
{
    /// <summary>The words, each with what it stands for.</summary>
    public required ImmutableArray<(string Word, T Value)> Words { get; init; }

    /// <inheritdoc/>
    public ImmutableArray<string> Options => [.. Words.Select(word => word.Word)];

    /// <inheritdoc/>
    public override string Choices => WordList.Or(Options.Select(word => $"`\"{word}\"`"));

    /// <inheritdoc/>
    public override string Print(object value) => Words.First(word => word.Value.Equals(value)).Word;

    /// <inheritdoc/>
    internal override object? Read(SettingsNode node, SettingsSink sink)
    {
        if (node is not TextNode text)
        {
            sink.Report(WrongSortOfSetting.At(Key, node.Sort, Choices, sink.At(node.Span)));
            return null;
        }

        foreach (var (word, value) in Words)
        {
            if (word == text.Value)
            {
                return value;
            }
        }

        sink.Report(UnknownChoice.At(Key, text.Value, Options, sink.At(node.Span)));
        return null;
    }
}

/// <summary>A setting that is one of a few words, whatever they stand for.</summary>
public interface IChoiceSetting
{
    /// <summary>The words.</summary>
    ImmutableArray<string> Options { get; }
}

/// <summary>A setting that is a quantity with its unit.</summary>
public sealed class QuantitySetting : Setting<Quantity>
{
    /// <summary>What it measures.</summary>
    public required Dimension Dimension { get; init; }

    /// <summary>The least it may be; null for anything above zero.</summary>
    public Quantity? Least { get; init; }

    /// <summary>The most it may be; null where there is no most.</summary>
    public Quantity? Most { get; init; }

    /// <inheritdoc/>
    public override string Choices => $"{Dimension.WithArticle()} in quotes, {Bounds}";

    private string Bounds => (Least, Most) switch
    {
        ({ } least, { } most) => $"from {least.Print()} to {most.Print()}",
        ({ } least, null) => $"{least.Print()} or more",
        (null, { } most) => $"up to {most.Print()}",
        _ => "above zero",
    };

    /// <inheritdoc/>
    public override string Print(object value) => ((Quantity)value).Print();

    /// <inheritdoc/>
    internal override object? Read(SettingsNode node, SettingsSink sink)
    {
        if (node is not TextNode text)
        {
            sink.Report(WrongSortOfSetting.At(Key, node.Sort, Choices, sink.At(node.Span)));
            return null;
        }

        var (quantity, problem, help) = QuantityText.Read(text.Value, Key, Dimension);
        if (quantity is null)
        {
            sink.Report(WrongSettingQuantity.At(problem, help, sink.At(node.Span)));
            return null;
        }

        var isWithin = quantity.BaseValue > 0
            && (Least is null || quantity.BaseValue >= Least.BaseValue)
            && (Most is null || quantity.BaseValue <= Most.BaseValue);
        if (quantity.Form != QuantityForm.Plain || !isWithin)
        {
            sink.Report(WrongSettingQuantity.At(
                quantity.Form != QuantityForm.Plain ? $"`{Key}` takes one value, and this is {quantity.Print()}" : $"`{Key}` cannot be {quantity.Print()}",
                $"write {Choices}",
                sink.At(node.Span)));
            return null;
        }

        return quantity;
    }
}

/// <summary>A setting that is a whole number.</summary>
public sealed class CountSetting : Setting<int>
{
    /// <summary>The least it may be.</summary>
    public required int Least { get; init; }

    /// <summary>The most it may be.</summary>
    public required int Most { get; init; }

    /// <inheritdoc/>
    public override string Choices => string.Create(CultureInfo.InvariantCulture, $"a whole number from {Least} to {Most}");

    /// <inheritdoc/>
    public override string Print(object value) => ((int)value).ToString(CultureInfo.InvariantCulture);

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, object value)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteNumberValue((int)value);
    }

    /// <inheritdoc/>
    internal override object? Read(SettingsNode node, SettingsSink sink)
    {
        if (node is NumberNode number && number.Value >= Least && number.Value <= Most && Math.Floor(number.Value) == number.Value)
        {
            return (int)number.Value;
        }

        sink.Report(node is NumberNode
            ? WrongSettingQuantity.At($"`{Key}` cannot be {sink.Text.Slice(node.Span)}", $"write {Choices}", sink.At(node.Span))
            : WrongSortOfSetting.At(Key, node.Sort, Choices, sink.At(node.Span)));
        return null;
    }
}

/// <summary>A setting that is a folder of the library.</summary>
public sealed class FolderSetting : Setting<string>
{
    /// <inheritdoc/>
    public override string Choices => "the path of a folder in the library, in quotes";

    /// <inheritdoc/>
    public override string Print(object value) => (string)value;

    /// <inheritdoc/>
    internal override object? Read(SettingsNode node, SettingsSink sink)
    {
        if (node is TextNode text && LibraryPath.Normalize(text.Value) is { Length: > 0 } path)
        {
            return path;
        }

        sink.Report(WrongSortOfSetting.At(Key, node is TextNode ? "a path that leads out of the library" : node.Sort, Choices, sink.At(node.Span)));
        return null;
    }
}

/// <summary>A setting that is a list of texts.</summary>
public sealed class TextsSetting : Setting<ImmutableArray<string>>
{
    /// <inheritdoc/>
    public override string Choices => "a list of texts";

    /// <inheritdoc/>
    public override string Print(object value) =>
        (ImmutableArray<string>)value is { IsEmpty: false } texts ? string.Join(", ", texts.Select(text => $"\"{text}\"")) : "none";

    /// <inheritdoc/>
    public override void Write(Utf8JsonWriter writer, object value)
    {
        ArgumentNullException.ThrowIfNull(writer);
        writer.WriteStartArray();
        foreach (var text in (ImmutableArray<string>)value)
        {
            writer.WriteStringValue(text);
        }

        writer.WriteEndArray();
    }

    /// <inheritdoc/>
    internal override object? Read(SettingsNode node, SettingsSink sink)
    {
        if (node is ListNode list && list.Items.FirstOrDefault(item => item is not TextNode) is null)
        {
            return list.Items.OfType<TextNode>().Select(text => text.Value).ToImmutableArray();
        }

        var wrong = (node as ListNode)?.Items.First(item => item is not TextNode) ?? node;
        sink.Report(WrongSortOfSetting.At(Key, wrong.Sort, Choices, sink.At(wrong.Span)));
        return null;
    }
}
