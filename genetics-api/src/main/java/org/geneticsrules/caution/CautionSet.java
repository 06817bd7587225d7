package org.geneticsrules.caution;

import com.google.common.collect.ImmutableList;
import com.google.common.collect.ImmutableMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.geneticsrules.document.Canonical;
import org.geneticsrules.document.Reference;
import org.geneticsrules.problem.Pointer;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;
import org.geneticsrules.trait.Allowed;
import org.geneticsrules.trait.Catalogue;
import org.geneticsrules.trait.Phenotype;
import org.geneticsrules.trait.Trait;

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

    /**
     * Checks the traits and states that triggers name against a catalogue. A trigger that names an unknown one would never be due.
     *
     * @param traits the catalogue
     * @return this
     * @throws ProblemsException if this set was written for another catalogue, or a trigger names a trait or state that is not there
     */
    public CautionSet check(Catalogue traits) {
        Problems problems = new Problems(Stage.REFERENCES);
        catalogue
                .filter(reference -> !reference.means(traits.reference()))
                .ifPresent(reference -> problems.add(
                        "other-catalogue",
                        "/catalogue",
                        "the cautions were written for catalogue " + reference + ", but were given "
                                + traits.reference()));
        cautions.values().forEach(caution -> {
            if (caution.trigger() instanceof Trigger.OnLook on) {
                String pointer = Pointer.of("cautions", caution.id(), "trigger", "shows");
                on.look().variables().forEach((name, allowed) -> {
                    Optional<Trait> trait = traits.trait(name);
                    String at = pointer + Pointer.of(name);
                    if (trait.isEmpty()) {
                        problems.unknown(
                                "unknown-trait",
                                at,
                                "trait",
                                name,
                                traits.traits().keySet());
                        return;
                    }
                    List<String> states = trait.get().states();
                    allowed.values().stream()
                            .filter(state -> !states.contains(state))
                            .forEach(state -> problems.unknown("unknown-state", at, "state of " + name, state, states));
                });
            }
        });
        problems.throwIfAny();
        return this;
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
