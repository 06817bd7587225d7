package org.geneticsrules.hypothesis;

import com.google.common.collect.ImmutableSet;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.geneticsrules.probability.Distribution;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/** Which traits a difference shows in. */
final class Concern {

    private Concern() {}

    /**
     * Returns the traits that differ each by itself; if none does, an irreducible set of traits that differ together; none if the looks
     * agree.
     */
    static Set<String> of(Fate before, Fate after, Collection<String> traits) {
        if (before.looks().equals(after.looks())) {
            return ImmutableSet.of();
        }
        if (before.looks().isEmpty() || after.looks().isEmpty()) {
            return ImmutableSet.copyOf(traits);
        }
        Set<String> alone = new LinkedHashSet<>();
        for (String trait : traits) {
            boolean bySex = !differ(before, after, List.of(Sex.VARIABLE))
                    && differ(before, after, List.of(Sex.VARIABLE, trait));
            if (differ(before, after, List.of(trait)) || bySex) {
                alone.add(trait);
            }
        }
        return alone.isEmpty() ? together(before, after, traits) : alone;
    }

    private static Set<String> together(Fate before, Fate after, Collection<String> traits) {
        List<String> left = new ArrayList<>(traits);
        for (String trait : traits) {
            List<String> fewer = new ArrayList<>(left);
            fewer.remove(trait);
            if (differ(before, after, fewer)) {
                left = fewer;
            }
        }
        return new LinkedHashSet<>(left);
    }

    private static boolean differ(Fate before, Fate after, Collection<String> traits) {
        return !seen(before, traits).equals(seen(after, traits));
    }

    private static Optional<Distribution<Phenotype>> seen(Fate fate, Collection<String> traits) {
        return fate.looks().map(looks -> looks.map(look -> look.restrictedTo(traits)));
    }
}
