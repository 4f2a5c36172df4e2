using Microsoft.EntityFrameworkCore.Migrations;

#nullable disable

namespace Trundle.Store.Migrations
{
    /// <inheritdoc />
    public partial class Clashes : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.AddColumn<string>(
                name: "After",
                table: "entries",
                type: "TEXT",
                nullable: true);
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropColumn(
                name: "After",
                table: "entries");
        }
    }
}
