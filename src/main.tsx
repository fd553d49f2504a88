/** Placeholder so that the build runs before the app is here. */
document.title = 'Firstfill';

export {};
