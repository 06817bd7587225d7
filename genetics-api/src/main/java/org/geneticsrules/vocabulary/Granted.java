package org.geneticsrules.vocabulary;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.trait.LifeStage;

/** What is taken for granted because the stage of life is not known, all of it in one sentence. Not thread-safe. */
final class Granted {

    private static final int MOST_TOLD = 8;

    private final String what;

    /** By the stage from which it is so, what is taken for granted. */
    private final Map<String, List<String>> byStage = new LinkedHashMap<>();

    private int count;
    private int more;

    /** Starts with nothing; {@code what} ends the sentence, as in {@code could be told}. */
    Granted(String what) {
        this.what = what;
    }

    void add(String thing, LifeStage from) {
        if (count == MOST_TOLD) {
            more++;
            return;
        }
        count++;
        byStage.computeIfAbsent(from.toString(), none -> new ArrayList<>()).add(thing);
    }

    /** The sentence, if anything is taken for granted. */
    Optional<String> sentence() {
        if (count == 0) {
            return Optional.empty();
        }
        if (count == 1) {
            Map.Entry<String, List<String>> only = byStage.entrySet().iterator().next();
            return Optional.of("it is taken for granted that " + only.getValue().get(0) + " " + what
                    + ", which is so from " + only.getKey() + " on");
        }
        List<String> told = new ArrayList<>();
        byStage.forEach((from, things) -> told.add(String.join(", ", things) + " (from " + from + " on)"));
        return Optional.of("it is taken for granted that each of these " + what + ": " + String.join(", ", told)
                + (more == 0 ? "" : ", and " + more + " more"));
    }
}
