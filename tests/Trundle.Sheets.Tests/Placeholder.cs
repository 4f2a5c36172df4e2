namespace Trundle.Sheets.Tests;
