using System.Collections;
using System.Reflection;
using System.Text.Json;
using System.Text.Json.Serialization;
using ProcScript.Analysis.Plans;
using ProcScript.Cards.Templating;
using ProcScript.Cards.Tests.Samples;
using Scriban.Runtime;

namespace ProcScript.Cards.Tests.Templates;

/// <summary>Templates see all of the plan, under the names of the published JSON.</summary>
public sealed class TemplateModelTests
{
    [Fact]
    public void Every_property_of_the_plan_and_of_what_it_holds_is_there()
    {
        HashSet<Type> seen = [];

        foreach (var plan in new[] { SamplePlan.Evaporator, SampleHandOver.Paused with { Questions = [new PlanQuestion("how many?", new PlanSource("a.proc", 1, 1), 1)] } })
        {
            Compare(plan, (ScriptObject)PackValues.Create(plan, Notation.Html)["plan"]!, seen);
        }

        var expected = typeof(Plan).Assembly.GetExportedTypes()
            .Where(type => type.Namespace == typeof(Plan).Namespace && type.Name.StartsWith("Plan", StringComparison.Ordinal) && type.GetMethod("<Clone>$") is not null);
        Assert.Equal(expected.Select(type => type.Name).Order(StringComparer.Ordinal), seen.Select(type => type.Name).Order(StringComparer.Ordinal));
    }

    private static void Compare(object record, ScriptObject document, HashSet<Type> seen)
    {
        seen.Add(record.GetType());
        foreach (var property in record.GetType().GetProperties(BindingFlags.Public | BindingFlags.Instance).Where(property => !property.IsDefined(typeof(JsonIgnoreAttribute))))
        {
            var name = JsonNamingPolicy.CamelCase.ConvertName(property.Name);
            Assert.True(document.Contains(name), $"{record.GetType().Name}.{property.Name}");
            var (value, shown) = (property.GetValue(record), document[name]);
            if (value is not string && value is IEnumerable items)
            {
                foreach (var (item, shownItem) in items.Cast<object>().Zip(((ScriptArray)shown!).Cast<object>()))
                {
                    CompareValue(item, shownItem, seen);
                }
            }
            else
            {
                CompareValue(value, shown, seen);
            }
        }
    }

    private static void CompareValue(object? value, object? shown, HashSet<Type> seen)
    {
        switch (value)
        {
            case null or string or bool:
                Assert.Equal(value, shown);
                break;
            case int or double:
                Assert.Equal(Convert.ToDouble(value, null), Convert.ToDouble(shown, null));
                break;
            default:
                Compare(value, (ScriptObject)shown!, seen);
                break;
        }
    }
}
