package org.calamus.acoustic;

/**
 * The raw bytes of an open phonetically tied mixture model, one array for each of its files.
 *
 * <p>The arrays are not copied and must not be changed. What they hold is checked when a model is
 * built.
 *
 * @param mdef binary model definition: phones, triphones, and the senones each consists of
 * @param means mean of each Gaussian
 * @param variances variance of each Gaussian
 * @param transitionMatrices probabilities of staying in and leaving each state
 * @param sendump mixture weights of each senone
 * @param featParams text: how the features were computed in training
 */
public record AcousticTables(
    byte[] mdef,
    byte[] means,
    byte[] variances,
    byte[] transitionMatrices,
    byte[] sendump,
    byte[] featParams) {}
