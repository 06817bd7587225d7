package org.geneticsrules.caution;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Reference;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Phenotype;

/**
 * The cautions that a plug-in brings.
 *
 * <p>Immutable and thread-safe.
 *
 * @param id its id
 * @param version its version
 * @param title its title, if stated
 * @param catalogue the catalogue whose traits its triggers name, if stated
 * @param cautions the cautions by id, in declared order
 */
public record CautionSet(
        String id,
        String version,
        Optional<String> title,
        Optional<Reference> catalogue,
        Map<String, Caution> cautions) {

    /**
     * Copies the cautions.
     *
     * @param id its id
     * @param version its version
     * @param title its title
     * @param catalogue the catalogue named
     * @param cautions the cautions by id
     */
    public CautionSet {
        cautions = ImmutableMap.copyOf(cautions);
    }

    /**
     * Returns the full reference to this set.
     *
     * @return id, version and hash of the canonical form
     */
    public Reference reference() {
        return new Reference(id, version, Optional.of(Canonical.sha256(CautionDocument.of(this))));
    }

    /**
     * Returns the cautions that are due.
     *
     * @param situation what an answer is about
     * @return cautions in declared order
     */
    public List<Caution> raisedBy(Situation situation) {
        return cautions.values().stream()
                .filter(caution -> isDue(caution.trigger(), situation))
                .collect(ImmutableList.toImmutableList());
    }

    private static boolean isDue(Trigger trigger, Situation situation) {
        if (trigger instanceof Trigger.OnQuestion on) {
            return on.kinds().contains(situation.question());
        }
        if (trigger instanceof Trigger.OnRelation on) {
            return situation.relation().filter(on.relations()::contains).isPresent();
        }
        if (trigger instanceof Trigger.OnLook on) {
            return on.roles().stream()
                    .flatMap(role ->
                            Objects.requireNonNull(situation.looks().getOrDefault(role, ImmutableList.of())).stream())
                    .anyMatch(phenotype -> shows(phenotype, on.look().variables()));
        }
        return true; // always
    }

    private static boolean shows(Phenotype phenotype, Map<String, Allowed> look) {
        return look.entrySet().stream()
                .allMatch(trait -> phenotype
                        .state(trait.getKey())
                        .filter(trait.getValue()::allows)
                        .isPresent());
    }
}
