package org.geneticsrules.comparison;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.geneticsrules.inference.Conclusions;
import org.geneticsrules.inference.Cost;
import org.geneticsrules.inference.Inference;
import org.geneticsrules.pedigree.Individual;
import org.geneticsrules.pedigree.Litter;
import org.geneticsrules.pedigree.Pedigree;
import org.geneticsrules.pedigree.PedigreeBuilder;
import org.geneticsrules.problem.TooLargeException;

/** The chances of any kindred: a pedigree that grows litter by litter. */
final class KindredChances implements Chances {

    private final Inference inference;
    private final Set<String> loci;
    private final List<Individual> animals;
    private final List<Litter> litters = new ArrayList<>();
    private final Set<String> ids = new HashSet<>();
    private double soFar;

    KindredChances(Inference inference, Set<String> loci, List<Individual> founders) {
        this.inference = inference;
        this.loci = loci;
        this.animals = new ArrayList<>(founders);
        this.soFar = Double.NaN;
    }

    @Override
    public double soFar() {
        if (Double.isNaN(soFar)) {
            soFar = log(pedigree().build());
        }
        return soFar;
    }

    @Override
    public double with(Litter litter, List<Individual> kits) {
        PedigreeBuilder builder = pedigree();
        kits.forEach(builder::add);
        String id = litter.id();
        while (ids.contains(id)) {
            id += "'"; // a further litter like one that is taken in
        }
        return log(builder.add(of(id, litter, kits)).build());
    }

    @Override
    public void add(Litter litter, List<Individual> kits) {
        animals.addAll(kits);
        ids.add(litter.id());
        litters.add(of(litter.id(), litter, kits));
        soFar = Double.NaN;
    }

    private PedigreeBuilder pedigree() {
        PedigreeBuilder builder = Pedigree.builder("kindred", "1");
        animals.forEach(builder::add);
        litters.forEach(builder::add);
        return builder;
    }

    private static Litter of(String id, Litter litter, List<Individual> kits) {
        String[] ids = kits.stream().map(Individual::id).toArray(String[]::new);
        return Litter.of(id, litter.dam(), litter.sires(), ids);
    }

    private double log(Pedigree pedigree) {
        Conclusions found = inference.about(pedigree).conclude();
        for (String one : pedigree.individuals().keySet()) {
            for (String locus : loci) {
                Conclusions.Standing standing = found.standing(one, locus);
                if ((standing != Conclusions.Standing.EXACT) && (standing != Conclusions.Standing.CONTRADICTED)) {
                    throw new TooLargeException(
                            "cells of tables, since the records of " + animals.size()
                                    + " related animals tie many loci together",
                            inference.about(pedigree).costs(loci).stream()
                                    .mapToDouble(Cost::cells)
                                    .max()
                                    .orElse(0),
                            Inference.USUAL_CELLS,
                            "ask about fewer traits, or fewer of these relatives");
                }
            }
        }
        return found.logLikelihood();
    }
}
