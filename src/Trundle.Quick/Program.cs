using Trundle.Cli;
using Trundle.Quick;

return TrundleCommand.Run(args, handOver: WholeCommand.Run);
