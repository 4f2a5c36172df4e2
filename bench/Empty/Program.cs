System.Console.WriteLine("{}");
