package org.geneticsrules.answer;

import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import org.geneticsrules.caution.Caution;
import org.geneticsrules.caution.CautionSet;
import org.geneticsrules.caution.Trigger;
import org.geneticsrules.trait.Phenotype;

/**
 * The looks that cautions have to be compared with: for each trigger, every state that an animal may show in the traits the trigger
 * names, whether or not the question asked about them, together with what was described or, by a name that covers several looks, may have
 * been seen.
 */
final class CautionLooks {

    private CautionLooks() {}

    static List<Phenotype> of(
            Collection<CautionSet> cautions,
            Set<String> ruled,
            Phenotype described,
            Collection<Phenotype> perhaps,
            Function<List<String>, Set<Phenotype>> possible) {
        Set<Phenotype> bases = bases(cautions, ruled, described, perhaps);
        Set<Phenotype> looks = new LinkedHashSet<>(bases);
        Set<List<String>> done = new LinkedHashSet<>();
        for (CautionSet set : cautions) {
            for (Caution caution : set.cautions().values()) {
                if (caution.trigger() instanceof Trigger.OnLook on) {
                    List<String> traits =
                            on.look().names().stream().filter(ruled::contains).toList();
                    if (!traits.isEmpty() && done.add(traits)) {
                        possible.apply(traits).forEach(look -> bases.forEach(base -> looks.add(merge(base, look))));
                    }
                }
            }
        }
        return new ArrayList<>(looks);
    }

    /** What was described, and the same with each state of the traits that no rule knows and that a record left open. */
    private static Set<Phenotype> bases(
            Collection<CautionSet> cautions, Set<String> ruled, Phenotype described, Collection<Phenotype> perhaps) {
        Set<String> read = new LinkedHashSet<>();
        cautions.forEach(set -> set.cautions().values().forEach(caution -> {
            if (caution.trigger() instanceof Trigger.OnLook on) {
                on.look().names().stream()
                        .filter(trait -> !ruled.contains(trait))
                        .forEach(read::add);
            }
        }));
        Set<Phenotype> bases = new LinkedHashSet<>(List.of(described));
        perhaps.forEach(look -> bases.add(merge(
                described,
                look.restrictedTo(look.traits().stream().filter(read::contains).toList()))));
        return bases;
    }

    private static Phenotype merge(Phenotype described, Phenotype possible) {
        Map<String, String> states = new LinkedHashMap<>(described.asMap());
        states.putAll(possible.asMap());
        return Phenotype.from(states);
    }
}
