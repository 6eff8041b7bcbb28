package varanid.intake.platform.database;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.test.context.ContextConfiguration;

/**
 * Puts a Spring test on a real, empty, migrated PostgreSQL database, with the application in its own role, as in
 * earnest:
 *
 * <pre>{@code
 * @SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT)
 * @OnTestDatabase
 * class AnimalIT { ... }
 * }</pre>
 *
 * <p>Each application context gets a database and a home folder of its own. Spring keeps a context for all classes that
 * configure it alike, and so these classes share a database: let each test make its own organisation, or its own random
 * names, and never count the rows of a whole table. A class that must be alone adds {@code @DirtiesContext}, at the cost
 * of a start.
 *
 * <p>A test without Spring calls {@link TestDatabase#create()}.
 */
@Documented
@Inherited
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@ContextConfiguration(initializers = TestDatabase.Initializer.class)
public @interface OnTestDatabase {}
