package varanid.intake.page;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import varanid.intake.platform.web.Caller;
import varanid.intake.platform.web.Role;

/**
 * What the frame of a page shows.
 *
 * @param you the name of who is signed in
 * @param person the id of who is signed in: what a browser keeps for somebody is kept under it
 * @param csrf the proof that a form is ours, to be sent along
 * @param places where the navigation leads
 */
public record Frame(
        @Nullable String you,
        @Nullable UUID person,
        @Nullable String csrf,
        List<Place> places) {

    /**
     * A place in the navigation.
     *
     * @param text the key of its name
     * @param here whether the page is there
     */
    public record Place(String path, String text, boolean here) {}

    /** Where somebody may go, in order, and nowhere for who is not signed in; what begins with the path of one is there. */
    static List<Place> places(Optional<Caller> caller, String path) {
        if (caller.isEmpty()) {
            return List.of();
        }
        List<Place> places = new ArrayList<>();
        places.add(place("/", "place.worklist", path));
        places.add(place("/animals", "place.animals", path));
        places.add(place("/rooms", "place.rooms", path));
        places.add(place("/checklist", "place.checklist", path));
        if (caller.get().roles().contains(Role.ADMINISTRATOR)) {
            places.add(place("/people", "place.people", path));
        }
        places.add(place("/account", "place.account", path));
        return places;
    }

    private static Place place(String at, String text, String path) {
        boolean here = path.equals(at) || (!at.equals("/") && path.startsWith(at + "/"));
        return new Place(at, text, here);
    }
}
