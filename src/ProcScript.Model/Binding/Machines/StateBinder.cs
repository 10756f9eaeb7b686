using System.Collections.Immutable;
using ProcScript.Model.Binding.Findings;
using ProcScript.Model.Binding.Names;
using ProcScript.Model.Binding.Places;
using ProcScript.Model.Binding.Quantities;
using ProcScript.Model.Machines;
using ProcScript.Model.Rules.Names;
using ProcScript.Model.Rules.Quantities;
using ProcScript.Syntax.Nodes;

namespace ProcScript.Model.Binding.Machines;

/// <summary>Binds what only energies and fluids say.</summary>
internal sealed class StateBinder(SymbolLookup lookup, ItemLookup items, ConditionBinder conditions, FindingSink sink)
{
    /// <summary>Binds one property of an energy.</summary>
    public void Property(Energy energy, PropertySyntax property, BindingPlace place)
    {
        switch (property)
        {
            case VerbsPropertySyntax verbs:
                energy.Verbs = VerbPairs.Bind(verbs, place, sink);
                break;
            case TextPropertySyntax text:
                SetText(energy, text.Keyword.Text, AuthorText.Bind(text.Text, place, sink));
                break;
            case NamesPropertySyntax after:
                var first = conditions.After(after, place);
                energy.Conditions = energy.Conditions.AddRange(first);
                energy.After = energy.After.AddRange(first.Select(condition => (Energy)condition.Item));
                break;
            case QuantityPropertySyntax wait:
                energy.Wait = QuantityBinder.Bind(wait.Quantity, QuantityDemand.Of("wait"), place, sink);
                break;
            case VoltagePropertySyntax voltage:
                energy.Voltage = QuantityBinder.Bind(voltage.Quantity, QuantityDemand.Of("voltage"), place, sink);
                energy.Current = voltage.Current?.Text switch
                {
                    "ac" => CurrentKind.Alternating,
                    "dc" => CurrentKind.Direct,
                    _ => CurrentKind.Unknown,
                };
                break;
            case VerifyPropertySyntax verify:
                energy.Verify = AuthorText.Bind(verify.Text, place, sink);
                energy.VerifyExpect = QuantityBinder.Bind(verify.Expect, place, sink);
                energy.VerifyAt = new VerificationBinder(lookup, items, conditions, sink).Place(verify, place);
                break;
        }
    }

    /// <summary>Binds one property of a fluid.</summary>
    public void Property(Fluid fluid, PropertySyntax property, BindingPlace place)
    {
        switch (property)
        {
            case VerbsPropertySyntax verbs:
                fluid.Verbs = VerbPairs.Bind(verbs, place, sink);
                break;
            case TextPropertySyntax { Keyword.Text: "empty" } text:
                fluid.Empty = AuthorText.Bind(text.Text, place, sink);
                break;
            case TextPropertySyntax text:
                fluid.Fill = AuthorText.Bind(text.Text, place, sink);
                break;
            case ChangePropertySyntax change:
                fluid.Changes = fluid.Changes.AddRange(Change(change, place));
                break;
            case QuantityPropertySyntax quantity:
                var bound = QuantityBinder.Bind(quantity.Quantity, QuantityDemand.Of(quantity.Keyword.Text), place, sink);
                switch (quantity.Keyword.Text)
                {
                    case "charge":
                        fluid.Charge = bound;
                        break;
                    case "takes":
                        fluid.Takes = bound;
                        break;
                    default:
                        fluid.Attended = bound;
                        break;
                }

                break;
        }
    }

    private static void SetText(Energy energy, string keyword, string text)
    {
        switch (keyword)
        {
            case "prepare":
                energy.Prepare = text;
                break;
            case "shutdown":
                energy.Shutdown = text;
                break;
            case "isolate":
                energy.Isolate = text;
                break;
            case "lock":
                energy.Lock = text;
                break;
            case "bleed":
                energy.Bleed = text;
                break;
            default:
                energy.Restore = text;
                break;
        }
    }

    /// <summary>What a new part changes; nothing with a finding.</summary>
    private ImmutableArray<ChargeChange> Change(ChangePropertySyntax change, BindingPlace place)
    {
        var part = items.Find<Part>(change.Part, "a part", place);
        var supply = change.Supply is { } name ? lookup.Supply(name, place, sink) : null;
        if (change.Direction.IsMissing)
        {
            sink.Poison();
            return [];
        }

        var amount = QuantityBinder.Bind(change.Amount, QuantityDemand.Of(change.Direction.Text), place, sink);
        return part is null || amount is null || (change.Supply is not null && supply is null)
            ? []
            : [new ChargeChange(part, change.Direction.Text == "add", amount, supply)];
    }

    /// <summary>Reports what an energy or a fluid cannot do without.</summary>
    public void CheckComplete(MachineItem item, OutlineItem outline)
    {
        string[] missing = item switch
        {
            Energy energy => [.. Missing(energy.Isolate, "isolate"), .. Missing(energy.Restore, "restore")],
            Fluid fluid => [.. Missing(fluid.Empty, "empty"), .. Missing(fluid.Fill, "fill")],
            _ => [],
        };
        if (missing.Length > 0)
        {
            sink.Report(MissingProperty.At(item, ItemWords.Sort(item), missing, outline.Declared, words => PropertyInsertion.In(outline, words)), outline.Place);
        }

        if (item is Fluid { Attended: { } attended, Takes: { } takes } && attended.BaseValue > takes.BaseValue)
        {
            sink.Report(ImpossibleQuantity.AttendedTooLong(item, attended, takes, item.Declared), outline.Place);
        }
    }

    private static string[] Missing(string? text, string word) => text is null ? [word] : [];
}
