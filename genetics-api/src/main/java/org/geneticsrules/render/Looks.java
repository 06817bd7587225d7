package org.geneticsrules.render;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Sex;

/**
 * Several looks side by side: what they share is said once, and each is named by what tells it from the others.
 *
 * @param varying the traits in which they differ, or all if there is one look only
 * @param shared the traits in which they are alike
 */
record Looks(List<String> varying, List<String> shared) {

    static Looks of(Collection<Phenotype> looks) {
        Set<String> traits = new LinkedHashSet<>();
        looks.forEach(look -> traits.addAll(look.traits()));
        List<String> varying = new ArrayList<>();
        List<String> shared = new ArrayList<>();
        for (String trait : traits) {
            Set<Optional<String>> states = new LinkedHashSet<>();
            looks.forEach(look -> states.add(look.state(trait)));
            (states.size() > 1 ? varying : shared).add(trait);
        }
        return varying.isEmpty() ? new Looks(shared, List.of()) : new Looks(varying, shared);
    }

    /** The look in the traits that differ. */
    String name(Phenotype look) {
        return words(look, varying);
    }

    static String words(Phenotype look, Collection<String> traits) {
        String words = traits.stream()
                .map(trait -> (trait.equals(Sex.VARIABLE) ? "" : trait + " ")
                        + look.state(trait).orElse("not modelled"))
                .collect(Collectors.joining(", "));
        return words.isEmpty() ? "nothing that is modelled" : words;
    }
}
