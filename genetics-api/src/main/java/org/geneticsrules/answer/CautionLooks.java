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
 * names, whether or not the question asked about them, together with what was described.
 */
final class CautionLooks {

    private CautionLooks() {}

    static List<Phenotype> of(
            Collection<CautionSet> cautions,
            Set<String> ruled,
            Phenotype described,
            Function<List<String>, Set<Phenotype>> possible) {
        Set<Phenotype> looks = new LinkedHashSet<>(List.of(described));
        Set<List<String>> done = new LinkedHashSet<>();
        for (CautionSet set : cautions) {
            for (Caution caution : set.cautions().values()) {
                if (caution.trigger() instanceof Trigger.OnLook on) {
                    List<String> traits =
                            on.look().names().stream().filter(ruled::contains).toList();
                    if (!traits.isEmpty() && done.add(traits)) {
                        possible.apply(traits).forEach(look -> looks.add(merge(described, look)));
                    }
                }
            }
        }
        return new ArrayList<>(looks);
    }

    private static Phenotype merge(Phenotype described, Phenotype possible) {
        Map<String, String> states = new LinkedHashMap<>(described.asMap());
        states.putAll(possible.asMap());
        return Phenotype.from(states);
    }
}
