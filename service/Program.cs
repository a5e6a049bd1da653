using WireCoach.Knowledge;
using WireCoach.Service.Endpoints;
using WireCoach.Service.Endpoints.Calc;
using WireCoach.Service.Json;

var builder = WebApplication.CreateBuilder(args);
if (string.IsNullOrEmpty(builder.Configuration["urls"]))
{
    builder.WebHost.UseUrls("http://127.0.0.1:5187");
}

var knowledge = KnowledgeFolder.Load(builder.Configuration["Knowledge:Folder"] ?? KnowledgeFolder.Beside);
builder.Services.AddSingleton(knowledge);
builder.Services.AddSingleton(knowledge.Sentences);
builder.Services.AddSingleton<Problems>();
builder.Services.ConfigureHttpJsonOptions(json => WireJson.Configure(json.SerializerOptions, knowledge.Sentences));
builder.Services.Configure<RouteHandlerOptions>(routes => routes.ThrowOnBadRequest = true);
builder.Services.AddExceptionHandler<BadBodies>();
builder.Services.AddProblemDetails();
builder.Services.AddOpenApi("v1");

var app = builder.Build();
app.UseExceptionHandler();
app.MapOpenApi();
app.MapCalculators();
await app.RunAsync();

namespace WireCoach.Service
{
    /// <summary>The entry point, named so that tests can start the service in process.</summary>
    internal sealed partial class Program;
}
