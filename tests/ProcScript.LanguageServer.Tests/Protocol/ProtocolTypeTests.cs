using System.Diagnostics;
using System.Text;
using ProcScript.LanguageServer.Tests.Samples;

namespace ProcScript.LanguageServer.Tests.Protocol;

/// <summary>
/// Every message of the server against the protocol's published types, those of the npm package vscode-languageserver-protocol: the compiler
/// of TypeScript says whether the server can read all that a client may send, whether a client can read all that it writes, and whether
/// each property and method is one that the protocol knows. They come with the VS Code extension's packages.
/// </summary>
[Slow]
public sealed class ProtocolTypeTests : IDisposable
{
    private const string Checks =
        """
        type P = typeof p;
        type Named<M> = { [K in keyof P]: P[K] extends { readonly method: M } ? P[K] : never }[keyof P];
        type Signature<M> = Named<M> extends { readonly type: { readonly _: infer S } } ? NonNullable<S> : never;
        type ParametersOf<M> = Signature<M> extends readonly [infer A, infer _R, infer _E, infer _M] ? A : Signature<M> extends readonly [infer A, infer _M] ? A : void;
        type ResultOf<M> = Signature<M> extends readonly [infer _A, infer R, infer _E, infer _M] ? R : void;
        // Values that the protocol lists are numbers or words here; data of the server's own is anything.
        type Wide<T, D extends 0[] = []> = D['length'] extends 8 ? any : 0 extends 1 & T ? any : T extends string ? string : T extends number ? number
          : T extends boolean ? boolean : T extends readonly (infer E)[] ? Wide<E, [...D, 0]>[] : T extends object ? { [K in keyof T]: Wide<T[K], [...D, 0]> } : T;
        type KeysOf<T> = T extends unknown ? keyof T : never;
        type At<T, K> = T extends unknown ? K extends keyof T ? T[K] : never : never;
        type ElementOf<T> = T extends readonly (infer E)[] ? E : never;
        type Unknown<O, T, D extends 0[] = []> = D['length'] extends 7 ? never : 0 extends 1 & T ? never : O extends readonly (infer E)[] ? Unknown<E, ElementOf<T>, [...D, 0]>
          : O extends object ? { [K in keyof O]-?: K extends KeysOf<T> ? Unknown<NonNullable<O[K]>, NonNullable<At<T, K>>, [...D, 0]> : K }[keyof O] : never;
        type Known<O, T> = [Unknown<O, T>] extends [never] ? true : Unknown<O, T>;
        type IsMethod<M> = [Named<M>] extends [never] ? 'no method of the protocol' : true;

        """;

    private readonly TemporaryLibrary _folder = new();

    public void Dispose() => _folder.Dispose();

    [Fact]
    public async Task Every_message_is_one_of_the_protocol()
    {
        var (read, written) = (new TypeScriptTypes(written: false), new TypeScriptTypes(written: true));
        var checks = new StringBuilder();
        var received = ServedMessages.Received(Path.Combine(Checkout.Root, "src/ProcScript.LanguageServer")).ToList();
        var sent = ServedMessages.Sent(Path.Combine(Checkout.Root, "src/ProcScript.LanguageServer")).ToList();
        Assert.True(received.Count > 30 && sent.Count > 5, "The messages are not found in the source any more.");
        foreach (var (method, parameters, result) in received)
        {
            checks.Append($$"""
                { // {{method}}
                  const method: IsMethod<'{{method}}'> = true;
                  const read: {{read.Of(parameters)}} = null! as Wide<ParametersOf<'{{method}}'>>;
                  const known: Known<{{read.Of(parameters)}}, ParametersOf<'{{method}}'>> = true;

                """);
            if (result is not null)
            {
                checks.Append($$"""
                      const written: Wide<ResultOf<'{{method}}'>> = null! as {{written.Of(result)}};
                      const knownResult: Known<NonNullable<{{written.Of(result)}}>, ResultOf<'{{method}}'>> = true;

                    """);
            }

            checks.Append("}\n");
        }

        foreach (var (method, parameters) in sent)
        {
            checks.Append($"{{ const method: IsMethod<'{method}'> = true;");
            checks.Append(parameters is null ? "" : $" const written: Wide<ParametersOf<'{method}'>> = null! as {written.Of(parameters)}; const known: Known<{written.Of(parameters)}, ParametersOf<'{method}'>> = true;");
            checks.Append(" }\n");
        }

        var (code, output) = await CompileAsync(Checks + read.Declarations + written.Declarations + checks);

        Assert.True(code == 0, output);
    }

    [Theory]
    [InlineData("const method: IsMethod<'textDocument/hoover'> = true;")]
    [InlineData("const known: Known<{ contents: { kind: string; value: string; colour: string } }, ResultOf<'textDocument/hover'>> = true;")]
    [InlineData("const written: Wide<ResultOf<'textDocument/hover'>> = null! as { contents?: { kind: string; value: string } };")]
    [InlineData("const read: { textDocument: { uri: string }; position: { line: string } } = null! as Wide<ParametersOf<'textDocument/hover'>>;")]
    public async Task What_is_not_of_the_protocol_is_found(string check)
    {
        var (code, output) = await CompileAsync(Checks + check);

        Assert.NotEqual(0, code);
        Assert.Contains("error TS2", output, StringComparison.Ordinal);
    }

    private async Task<(int Code, string Output)> CompileAsync(string source)
    {
        var packages = Path.Combine(Checkout.Root, "src/vscode/node_modules");
        var types = Path.Combine(packages, "vscode-languageserver-protocol/lib/common/api.d.ts");
        var compiler = Path.Combine(packages, ".bin/tsc");
        Assert.SkipUnless(File.Exists(types) && File.Exists(compiler), "The protocol's types are not installed: npm --prefix src/vscode ci --ignore-scripts");
        _folder.With("checks.ts", $"import type * as p from '{types}';\n{source}\nexport {{}};\n");
        _folder.With("tsconfig.json", """{ "compilerOptions": { "strict": true, "noEmit": true, "skipLibCheck": true, "module": "ESNext", "moduleResolution": "Bundler", "target": "ES2022", "types": [] }, "files": ["checks.ts"] }""");
        using var process = Process.Start(new ProcessStartInfo(compiler, ["-p", _folder.Path]) { RedirectStandardOutput = true })!;
        var output = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        return (process.ExitCode, output);
    }
}
