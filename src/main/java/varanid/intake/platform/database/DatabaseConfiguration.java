package varanid.intake.platform.database;

import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import org.springframework.boot.flyway.autoconfigure.FlywayConfigurationCustomizer;
import org.springframework.boot.flyway.autoconfigure.FlywayConnectionDetails;
import org.springframework.boot.flyway.autoconfigure.FlywayMigrationStrategy;
import org.springframework.boot.jdbc.autoconfigure.JdbcConnectionDetails;
import org.springframework.context.annotation.Bean;
import org.springframework.context.annotation.Condition;
import org.springframework.context.annotation.ConditionContext;
import org.springframework.context.annotation.Conditional;
import org.springframework.context.annotation.Configuration;
import org.springframework.core.env.Environment;
import org.springframework.core.type.AnnotatedTypeMetadata;
import org.springframework.util.StringUtils;
import varanid.intake.platform.start.CannotStart;
import varanid.intake.platform.start.HomeFolder;

/**
 * Tells Spring Boot where the database is. Everything that uses the database depends on the bean
 * {@link DatabaseAccess}, so the embedded server starts before and stops after all of it.
 */
@Configuration(proxyBeanMethods = false)
class DatabaseConfiguration {

    @Bean
    HomeFolder homeFolder(Environment environment) {
        String named = environment.getProperty("varanid.intake.home", "");
        return HomeFolder.open(
                StringUtils.hasText(named)
                        ? Path.of(named)
                        : HomeFolder.defaultFolder(
                                System.getenv(),
                                System.getProperty("os.name"),
                                Path.of(System.getProperty("user.home"))));
    }

    @Bean
    JdbcConnectionDetails serviceConnection(DatabaseAccess access) {
        return new ServiceConnection(access);
    }

    @Bean
    FlywayConnectionDetails ownerConnection(DatabaseAccess access) {
        return new OwnerConnection(access);
    }

    /** Lets {@code migrations/afterMigrate.sql} know whom to give rights to. */
    @Bean
    FlywayConfigurationCustomizer serviceRolePlaceholder(DatabaseAccess access) {
        return configuration -> {
            Map<String, String> placeholders = new HashMap<>(configuration.getPlaceholders());
            placeholders.put("service_role", access.service().role());
            configuration.placeholders(placeholders);
        };
    }

    @Bean
    FlywayMigrationStrategy migration() {
        return Migration::run;
    }

    @Configuration(proxyBeanMethods = false)
    @Conditional(WithoutAddress.class)
    static class Embedded {

        @Bean
        EmbeddedServer.Running embeddedServer(HomeFolder home, Environment environment) {
            String programs = environment.getProperty("varanid.intake.database.programs", "");
            return EmbeddedServer.start(
                    home,
                    new ServerSettings(
                            StringUtils.hasText(programs) ? Path.of(programs) : home.resolve("postgresql"),
                            port(environment.getProperty("varanid.intake.database.port", "0")),
                            true));
        }

        @Bean
        DatabaseAccess databaseAccess(EmbeddedServer.Running server) {
            return server.access();
        }

        private static int port(String text) {
            try {
                int port = Integer.parseInt(text.strip());
                if (port >= 0 && port <= 65535) {
                    return port;
                }
            } catch (NumberFormatException e) {
                // told below
            }
            throw new CannotStart(
                    "VARANID_INTAKE_DATABASE_PORT is \"%s\", which is no port.".formatted(text),
                    "Give a number from 1 to 65535, or 0 for any free port.");
        }
    }

    @Configuration(proxyBeanMethods = false)
    @Conditional(WithAddress.class)
    static class External {

        @Bean
        DatabaseAccess databaseAccess(Environment environment) {
            DatabaseAccess access = ExternalDatabase.named(environment);
            ExternalDatabase.check(access);
            return access;
        }
    }

    static class WithAddress implements Condition {

        @Override
        public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
            return StringUtils.hasText(context.getEnvironment().getProperty("spring.datasource.url"));
        }
    }

    static class WithoutAddress extends WithAddress {

        @Override
        public boolean matches(ConditionContext context, AnnotatedTypeMetadata metadata) {
            return !super.matches(context, metadata);
        }
    }

    private record ServiceConnection(DatabaseAccess access) implements JdbcConnectionDetails {

        @Override
        public String getJdbcUrl() {
            return access.url();
        }

        @Override
        public String getUsername() {
            return access.service().role();
        }

        @Override
        public String getPassword() {
            return access.service().password();
        }
    }

    private record OwnerConnection(DatabaseAccess access) implements FlywayConnectionDetails {

        @Override
        public String getJdbcUrl() {
            return access.url();
        }

        @Override
        public String getUsername() {
            return access.owner().role();
        }

        @Override
        public String getPassword() {
            return access.owner().password();
        }
    }
}
