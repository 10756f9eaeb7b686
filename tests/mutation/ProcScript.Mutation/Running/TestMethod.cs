using System.Collections;
using System.Globalization;
using System.Reflection;

namespace ProcScript.Mutation.Running;

/// <summary>A test with its arguments, run without its runner: what is tried by thousands of runs must start in no time.</summary>
/// <param name="Type">The class.</param>
/// <param name="Method">The method.</param>
/// <param name="Arguments">What it is called with.</param>
internal sealed record TestMethod(Type Type, MethodInfo Method, object?[] Arguments)
{
    private const string Skipped = "$XunitDynamicSkip$";

    private static readonly Dictionary<Type, object> Fixtures = [];

    /// <summary>The name that a report calls it by.</summary>
    public string Name => $"{Type.Name}.{Method.Name}{(Arguments.Length == 0 ? "" : $"({string.Join(", ", Arguments.Select(Told))})")}";

    /// <summary>The tests of an assembly, in an order that is always the same.</summary>
    /// <param name="assembly">The assembly.</param>
    /// <param name="isWanted">Tells which classes by their names.</param>
    public static IEnumerable<TestMethod> Of(Assembly assembly, Func<string, bool> isWanted) =>
        from type in assembly.GetTypes().Where(type => type is { IsClass: true, IsAbstract: false } && isWanted(type.Name)).OrderBy(type => type.FullName, StringComparer.Ordinal)
        from method in type.GetMethods().OrderBy(method => method.Name, StringComparer.Ordinal)
        from arguments in Rows(type, method)
        select new TestMethod(type, method, Fitted(method, arguments));

    /// <summary>What is wrong; null where it passes.</summary>
    public async Task<string?> RunAsync()
    {
        object? test = null;
        try
        {
            var constructor = Type.GetConstructors()[0];
            test = constructor.Invoke([.. constructor.GetParameters().Select(parameter => Fixture(parameter.ParameterType))]);
            await CallAsync(test, "InitializeAsync");
            await DoneAsync(Method.Invoke(Method.IsStatic ? null : test, Arguments));
            return null;
        }
        catch (Exception failure)
        {
            var reason = failure is TargetInvocationException { InnerException: { } inner } ? inner : failure;
            return reason.Message.StartsWith(Skipped, StringComparison.Ordinal) ? null : $"{reason.GetType().Name}: {reason.Message.Split('\n')[0]}";
        }
        finally
        {
            await CallAsync(test, "DisposeAsync");
            (test as IDisposable)?.Dispose();
        }
    }

    private static object? Fixture(Type type)
    {
        if (type.IsInterface)
        {
            return null;
        }

        if (!Fixtures.TryGetValue(type, out var fixture))
        {
            Fixtures[type] = fixture = Activator.CreateInstance(type)!;
        }

        return fixture;
    }

    private static async Task CallAsync(object? test, string method)
    {
        if (test?.GetType().GetMethod(method, []) is { } found)
        {
            await DoneAsync(found.Invoke(test, null));
        }
    }

    private static async Task DoneAsync(object? result)
    {
        switch (result)
        {
            case Task task:
                await task;
                break;
            case ValueTask task:
                await task;
                break;
        }
    }

    private static IEnumerable<object?[]> Rows(Type type, MethodInfo method)
    {
        foreach (var attribute in method.GetCustomAttributes())
        {
            switch (attribute.GetType().Name)
            {
                case "FactAttribute":
                    yield return [];
                    break;
                case "InlineDataAttribute":
                    yield return (object?[])Property(attribute, "Data")!;
                    break;
                case "MemberDataAttribute":
                    var owner = (Type?)Property(attribute, "MemberType") ?? type;
                    var name = (string)Property(attribute, "MemberName")!;
                    var rows = owner.GetProperty(name, BindingFlags.Static | BindingFlags.Public | BindingFlags.FlattenHierarchy)?.GetValue(null)
                        ?? owner.GetMethod(name, BindingFlags.Static | BindingFlags.Public | BindingFlags.FlattenHierarchy)?.Invoke(null, (object?[]?)Property(attribute, "Arguments"))
                        ?? throw new InvalidOperationException($"{owner.Name}.{name} is not to be found.");
                    foreach (var row in (IEnumerable)rows)
                    {
                        yield return row as object?[] ?? (object?[])row.GetType().GetInterface("ITheoryDataRow")!.GetMethod("GetData")!.Invoke(row, null)!;
                    }

                    break;
            }
        }
    }

    private static object? Property(object holder, string name) => holder.GetType().GetProperty(name)!.GetValue(holder);

    /// <summary>The arguments as the method takes them: the last ones as a list, left-out ones by their defaults.</summary>
    private static object?[] Fitted(MethodInfo method, object?[] arguments)
    {
        var parameters = method.GetParameters();
        if (parameters is [.., { ParameterType: { IsArray: true } list } last] && last.IsDefined(typeof(ParamArrayAttribute))
            && !(arguments.Length == parameters.Length && (arguments[^1] is null || list.IsInstanceOfType(arguments[^1]))))
        {
            var rest = arguments[(parameters.Length - 1)..];
            var array = Array.CreateInstance(list.GetElementType()!, rest.Length);
            rest.CopyTo(array, 0);
            return [.. arguments[..(parameters.Length - 1)], array];
        }

        return [.. arguments, .. parameters.Skip(arguments.Length).Select(parameter => parameter.DefaultValue)];
    }

    private static string Told(object? argument) => string.Create(CultureInfo.InvariantCulture, $"{argument}") is var text && text.Length > 40 ? text[..40] + "…" : text;
}
