package varanid.intake.platform.database;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;

/**
 * The main class of a child process: starts the durable embedded server on a folder, then
 *
 * <ul>
 *   <li>{@code write}: commits numbered rows one by one, for ever, printing each number once it is acknowledged;
 *   <li>{@code count}: prints the highest number and how many there are, and ends in order.
 * </ul>
 *
 * <p>Arguments: what to do, the home folder, where to unpack the programs.
 */
final class ServerChild {

    private ServerChild() {}

    public static void main(String[] arguments) throws SQLException {
        HomeFolder home = HomeFolder.open(Path.of(arguments[1]));
        ServerSettings settings = new ServerSettings(Path.of(arguments[2]), 0, true);
        try (EmbeddedServer.Running server = EmbeddedServer.start(home, settings);
                Connection connection = connect(server.access());
                Statement statement = connection.createStatement()) {
            if (arguments[0].equals("write")) {
                statement.execute("CREATE TABLE IF NOT EXISTS row (number bigint)");
                for (long number = 1; ; number++) {
                    statement.execute("INSERT INTO row VALUES (" + number + ")");
                    System.out.println("acknowledged " + number);
                }
            }
            try (ResultSet result = statement.executeQuery("SELECT max(number), count(*) FROM row")) {
                result.next();
                System.out.println("found " + result.getLong(1) + " " + result.getLong(2));
            }
        } catch (CannotStart e) {
            System.out.println("cannot start: " + e.getMessage());
        }
    }

    private static Connection connect(DatabaseAccess access) throws SQLException {
        return DriverManager.getConnection(
                access.url(), access.owner().role(), access.owner().password());
    }
}
