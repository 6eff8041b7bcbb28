package varanid.intake.platform.web;

import java.util.Optional;
import java.util.function.Function;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * What was given in one place of a request: a value, nothing, or something faulty that has been noted. Values are taken
 * out after reading, when it is known that there is no fault.
 *
 * @param <T> what a good value is
 */
public final class Given<T> {

    /** Where faults of this value go. */
    @FunctionalInterface
    interface Place {
        void fault(String wrong, String right);
    }

    private final Place place;
    private final String right;
    private final @Nullable T value;
    private final boolean faulty;

    private Given(Place place, String right, @Nullable T value, boolean faulty) {
        this.place = place;
        this.right = right;
        this.value = value;
        this.faulty = faulty;
    }

    static <T> Given<T> value(Place place, String right, T value) {
        return new Given<>(place, right, value, false);
    }

    static <T> Given<T> nothing(Place place, String right) {
        return new Given<>(place, right, null, false);
    }

    static <T> Given<T> faulty(Place place, String wrong, String right) {
        place.fault(wrong, right);
        return new Given<>(place, right, null, true);
    }

    static <T> Given<T> alreadyFaulty(Place place, String right) {
        return new Given<>(place, right, null, true);
    }

    /** Notes a fault where nothing was given. */
    public Given<T> required() {
        return value == null && !faulty ? faulty(place, "is missing", right) : this;
    }

    /** Notes a fault where the value does not pass. */
    public Given<T> check(Predicate<T> test, String wrong, String rightInstead) {
        return value == null || test.test(value) ? this : faulty(place, wrong, rightInstead);
    }

    /**
     * Makes something better of the value. An {@link IllegalArgumentException} from the function becomes a fault whose
     * wrong is the exception's message.
     */
    public <R> Given<R> map(String rightInstead, Function<T, R> better) {
        if (value == null) {
            return faulty ? alreadyFaulty(place, rightInstead) : nothing(place, rightInstead);
        }
        try {
            return value(place, rightInstead, better.apply(value));
        } catch (IllegalArgumentException e) {
            return faulty(place, String.valueOf(e.getMessage()), rightInstead);
        }
    }

    /** Notes a fault of one's own here. */
    public void fault(String wrong, String rightInstead) {
        place.fault(wrong, rightInstead);
    }

    /** Whether there is a good value. */
    public boolean isGiven() {
        return value != null;
    }

    /** @throws IllegalStateException where there is none: {@link #required()} was not asked, or faults not thrown */
    public T get() {
        if (value == null) {
            throw new IllegalStateException("nothing given; ask for required(), and for faults before values");
        }
        return value;
    }

    public Optional<T> find() {
        return Optional.ofNullable(value);
    }

    public T orElse(T other) {
        return value != null ? value : other;
    }

    public @Nullable T orNull() {
        return value;
    }
}
