package org.geneticsrules.pedigree;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.geneticsrules.document.Reference;
import org.geneticsrules.problem.Problems;
import org.geneticsrules.problem.ProblemsException;
import org.geneticsrules.problem.Stage;

/** Puts a pedigree together. The order in which individuals and litters are added does not matter. Not thread-safe. */
public final class PedigreeBuilder {

    final String id;
    final String version;
    Optional<String> title = Optional.empty();
    Optional<Reference> catalogue = Optional.empty();
    final Map<String, Individual> individuals = new LinkedHashMap<>();
    final Map<String, Litter> litters = new LinkedHashMap<>();
    final List<Correction> corrections = new ArrayList<>();
    private final Problems shape = new Problems(Stage.SHAPE);

    PedigreeBuilder(String id, String version) {
        this.id = id;
        this.version = version;
    }

    /**
     * States the title.
     *
     * @param text the title
     * @return this
     */
    public PedigreeBuilder title(String text) {
        title = Optional.of(text);
        return this;
    }

    /**
     * States the catalogue whose traits the observations name.
     *
     * @param reference its id and version, and its hash if it is to be that one only
     * @return this
     */
    public PedigreeBuilder catalogue(Reference reference) {
        catalogue = Optional.of(reference);
        return this;
    }

    /**
     * Adds an individual.
     *
     * @param individual the individual; one whose id was added already is a problem that {@link #build} reports
     * @return this
     */
    public PedigreeBuilder add(Individual individual) {
        if (individuals.putIfAbsent(individual.id(), individual) != null) {
            shape.add(
                    "duplicate-id",
                    PedigreeChecks.pointer(individual),
                    "the individual \"" + individual.id() + "\" is recorded twice",
                    "each id once");
        }
        return this;
    }

    /**
     * Adds a litter.
     *
     * @param litter the litter; one whose id was added already is a problem that {@link #build} reports
     * @return this
     */
    public PedigreeBuilder add(Litter litter) {
        if (litters.putIfAbsent(litter.id(), litter) != null) {
            shape.add(
                    "duplicate-id",
                    PedigreeChecks.pointer(litter),
                    "the litter \"" + litter.id() + "\" is recorded twice",
                    "each id once");
        }
        return this;
    }

    /**
     * Adds an entry to the end of the trail of corrections. The records added are those after all corrections; this adds only what is
     * known of how they came to be so. To correct a pedigree, see {@link Pedigree#corrected}.
     *
     * @param correction a correction whose results are, or were corrected later to, the records added
     * @return this
     */
    public PedigreeBuilder add(Correction correction) {
        corrections.add(correction);
        return this;
    }

    /**
     * Checks and returns the pedigree.
     *
     * @return the pedigree
     * @throws ProblemsException if something is wrong: all problems of the first stage that found any, see the package's description
     */
    public Pedigree build() {
        if (id.isBlank() || version.isBlank()) {
            shape.add("blank-id", "", "the pedigree has a blank id or version", "an id such as example.kennel");
        }
        shape.throwIfAny();
        PedigreeChecks checks = new PedigreeChecks(this);
        checks.references();
        return new Pedigree(this, checks.meaning());
    }
}
