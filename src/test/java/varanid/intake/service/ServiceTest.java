package varanid.intake.service;

import java.lang.annotation.ElementType;
import java.lang.annotation.Inherited;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.boot.test.context.SpringBootTest.WebEnvironment;
import org.springframework.context.annotation.Import;
import varanid.intake.platform.database.OnTestDatabase;

/**
 * A test of the running service over HTTP. All such classes share one service and its database, so each test makes an
 * organisation of its own with {@link Organisations}:
 *
 * <pre>{@code
 * @ServiceTest
 * class AnimalIT {
 *     @Autowired Organisations organisations;
 *
 *     @Test
 *     void registers() {
 *         Client keeper = organisations.create().keeper();
 *         Answer answer = keeper.post("/api/v1/animals", "{}");
 * }</pre>
 */
@Target(ElementType.TYPE)
@Retention(RetentionPolicy.RUNTIME)
@Inherited
@SpringBootTest(webEnvironment = WebEnvironment.RANDOM_PORT)
@OnTestDatabase
@Import({Organisations.class, MovableClock.class})
public @interface ServiceTest {}
