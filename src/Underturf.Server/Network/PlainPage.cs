namespace Underturf.Server;

/// <summary>A page of words that needs nothing besides itself.</summary>
internal static class PlainPage
{
    public static string Of(string title, string content) =>
        $$"""
        <!DOCTYPE html>
        <html lang="en">
        <head>
          <meta charset="utf-8" />
          <meta name="viewport" content="width=device-width, initial-scale=1" />
          <title>Underturf: {{title}}</title>
          <style>
            body { margin: 0 auto; max-inline-size: 40rem; padding: 1rem; background: #f8f5ec; color: #1a211e; font: 400 1.125rem/1.5 system-ui, sans-serif; }
            h1 { font-size: 1.6rem; line-height: 1.2; }
            li { margin-block-end: 1rem; }
            .button { display: inline-block; padding: 0.9rem 1.5rem; border: 2px solid #0c4a4e; border-radius: 4px; color: #0c4a4e; font-weight: 700; }
            code { overflow-wrap: anywhere; }
            svg { display: block; inline-size: min(18rem, 100%); block-size: auto; }
          </style>
        </head>
        <body>
          <h1>{{title}}</h1>
          {{content}}
        </body>
        </html>
        """;
}
