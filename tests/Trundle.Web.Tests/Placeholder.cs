namespace Trundle.Web.Tests;
