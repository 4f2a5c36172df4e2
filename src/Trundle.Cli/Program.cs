using Trundle.Cli;

return await TrundleCommand.RunAsync(args);
